import type { NewMountDecision } from '@shaftbook/contract/mount-decisions'
import type { SiteTx } from '../db/database.ts'

export interface DecisionRow extends NewMountDecision {
  readonly mountRecordId: string
  readonly decidedAt: Date
  readonly decidedBy: string
}

export async function addDecision(tx: SiteTx, { until, ...decision }: DecisionRow): Promise<void> {
  const { siteId } = tx.scope
  await tx.prisma.mountDecision.create({
    data: { siteId, ...decision, until: until === null ? null : new Date(until) },
  })
}

/** Takes the mount flags of a stay off the open list until a day, or brings them back where there is none. */
export async function putOffMountFlags(
  { scope, sql }: Pick<SiteTx, 'scope' | 'sql'>,
  fitmentId: string,
  putOff: { until: string; reason: string } | null,
): Promise<void> {
  await sql(
    `update flag set put_off_until = $4::date, put_off_reason = $5, put_off_by = $6::uuid
     where site_id = $1::uuid and fitment_id = $2::uuid and kind = any($3) and cleared_at is null`,
    [scope.siteId, fitmentId, mountFlags, putOff?.until ?? null, putOff?.reason ?? null, putOff && scope.personId],
  )
}

const mountFlags = ['mount-under', 'mount-over', 'mount-not-proven', 'residual-too-small', 'residual-not-proven']
