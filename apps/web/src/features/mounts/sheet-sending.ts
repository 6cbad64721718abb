import { changeMountDraft, correctMount, createMount, signMount, type MountRecord } from '@shaftbook/contract/mounts'
import { call } from '../../api/call.ts'
import { correctionBody, draftBody, newMountBody, type BodyInput } from './sheet-body.ts'
import type { SheetAbout } from './use-sheet-state.ts'

/** Sends a sheet: kept as a draft or signed, as a new record, on top of a draft, or as a correction. */
export async function sendSheet(
  site: string,
  { purpose, positionId, record }: SheetAbout,
  input: BodyInput,
  sign: boolean,
): Promise<MountRecord> {
  if (purpose === 'correction' && record)
    return call(correctMount, { params: { site, id: record.id }, body: correctionBody(input) })
  if (purpose === 'draft' && record) {
    const params = { site, id: record.id }
    const changed = await call(changeMountDraft, { params, body: draftBody(input), version: record.version })
    if (!sign) return changed
    return call(signMount, { params, body: {}, version: changed.version })
  }
  return call(createMount, { params: { site }, body: newMountBody(input, positionId, sign) })
}
