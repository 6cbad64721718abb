import { takenCode } from '@shaftbook/contract/judge-kit-check'
import type { MountDetails } from '@shaftbook/contract/mount-details'
import { v7 as uuidv7 } from 'uuid'
import type { SiteTx } from '../db/database.ts'

interface FittedBy {
  readonly mountRecordId: string
  readonly positionId: string
}

/**
 * Writes down what a signed mount took, line by line: a line that took nothing has the quantity 0 and its reason. Another part
 * than planned is looked up in the register by its number, else by its designation. One statement.
 */
export async function addFittedParts(
  tx: Pick<SiteTx, 'scope' | 'sql'>,
  { mountRecordId, positionId }: FittedBy,
  kitCheck: MountDetails['kitCheck'],
): Promise<void> {
  if (kitCheck.length === 0) return
  const rows = kitCheck.map((line) => {
    const { kitLineId, partId, kind, plannedCode, found, unit, reason } = line
    const taken = found === 'as-planned' || found === 'other'
    return {
      id: uuidv7(),
      part_id: found === 'other' ? null : partId,
      code: takenCode(line) ?? plannedCode,
      kind,
      quantity: taken ? line.quantity : 0,
      unit,
      kit_line_id: kitLineId,
      reason,
    }
  })
  await tx.sql(
    `insert into fitted_part (site_id, id, mount_record_id, position_id, part_id, code, kind, quantity, unit, kit_line_id, reason)
     select $1::uuid, r.id, $2::uuid, $3::uuid,
       coalesce(r.part_id, (
         select part.id from part where part.site_id = $1::uuid and (part.number = r.code or part.designation = r.code)
         order by part.number = r.code desc, part.id limit 1)),
       r.code, r.kind, r.quantity, r.unit, r.kit_line_id, r.reason
     from jsonb_to_recordset($4::jsonb) as r(id uuid, part_id uuid, code text, kind text, quantity float8, unit text,
       kit_line_id uuid, reason text)`,
    [tx.scope.siteId, mountRecordId, positionId, JSON.stringify(rows)],
  )
}
