import { judgementOf } from '@shaftbook/contract/judge-mount'
import type { MountDraftChange, MountRecord, MountSignature, NewMountRecord } from '@shaftbook/contract/mounts'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import type { Sql } from '../db/database.ts'
import { receive } from '../db/receipts.ts'
import { DomainError, notFound } from '../domain-error.ts'
import { holdPlace, type Place } from '../meters/place.ts'
import { doWork, type Work, type Worker } from '../meters/work.ts'
import { basisOf, checkGoesOn, registerBearing } from './fitting.ts'
import { addRecord, changeRecord, findPositionOf, findRecord, sheetOf, type RecordContents } from './mounts.store.ts'
import { checkByFeel } from './signable.ts'
import { signDraft } from './signing.ts'
import { takeReadings } from './typed-readings.ts'

type Draft = Omit<MountDraftChange, 'sign' | 'changeId'>
type Signature = z.output<typeof MountSignature>

export async function readMount(sql: Sql, siteId: string, id: string): Promise<MountRecord> {
  const record = await findRecord(sql, siteId, id)
  if (!record) throw notFound('mount record')
  return record
}

/** Logs a mount as a draft, or signs it at once. */
export function createMount(context: Context, worker: Worker, body: NewMountRecord): Promise<MountRecord> {
  return doWork(context, worker, async (work) => {
    if ((await receive(work.tx, 'create-mount-record', body.id, body)) === 'repeat')
      return await recordOf(work, body.id)
    const place = await holdPlace(work.tx, body.positionId)
    const contents = await contentsOf(work, place, body)
    const { id, positionId } = body
    await addRecord(work.tx, { ...contents, id, positionId, createdBy: work.personId, createdAt: work.now })
    if (body.sign) await signDraft(work, place, await recordOf(work, id), body)
    return await recordOf(work, id)
  })
}

/** Replaces what a draft says, and signs it in the same act where that is asked for. */
export function changeDraft(
  context: Context,
  worker: Worker,
  id: string,
  version: number,
  body: MountDraftChange,
): Promise<MountRecord> {
  return doWork(context, worker, async (work) => {
    if (await isRepeat(work, 'change-mount-record', id, body)) return await recordOf(work, id)
    const { place } = await openDraft(work, id, version)
    await changeRecord(work.tx, id, await contentsOf(work, place, body))
    if (body.sign) await signDraft(work, place, await recordOf(work, id), body)
    return await recordOf(work, id)
  })
}

/** Signs a draft as it stands; how the old bearing ended may be told with the signature. */
export function signMount(
  context: Context,
  worker: Worker,
  id: string,
  version: number,
  body: Signature,
): Promise<MountRecord> {
  return doWork(context, worker, async (work) => {
    if (await isRepeat(work, 'sign-mount-record', id, body)) return await recordOf(work, id)
    const { place, draft } = await openDraft(work, id, version)
    await signDraft(work, place, { ...draft, removal: body.removal ?? draft.removal }, body)
    return await recordOf(work, id)
  })
}

/** True where the same change came before under its own id: it is answered before its version is judged. */
async function isRepeat(
  work: Work,
  endpoint: string,
  id: string,
  body: { changeId?: string | undefined },
): Promise<boolean> {
  const { changeId } = body
  return changeId !== undefined && (await receive(work.tx, endpoint, changeId, { ...body, id })) === 'repeat'
}

async function openDraft(work: Work, id: string, version: number): Promise<{ place: Place; draft: MountRecord }> {
  const place = await holdPlaceOf(work, id)
  const draft = await recordOf(work, id)
  if (draft.signedAt !== null) {
    throw new DomainError('already-signed', 'This record is signed and never changes: correct it by a further record.')
  }
  if (draft.version !== version) {
    throw new DomainError(
      'version-stale',
      'Somebody changed this draft since you read it: read it again, then enter your change.',
    )
  }
  return { place, draft }
}

/** Holds the machine of a record's position. */
export async function holdPlaceOf(work: Work, recordId: string): Promise<Place> {
  const positionId = await findPositionOf(work.tx, recordId)
  if (positionId === undefined) throw notFound('mount record')
  return await holdPlace(work.tx, positionId)
}

export async function recordOf(work: Work, id: string): Promise<MountRecord> {
  return await readMount(work.tx.sql, work.tx.scope.siteId, id)
}

/** What a record says, read and judged; the bearing is registered with it. A draft keeps the hours as the meter shows them. */
async function contentsOf(work: Work, place: Place, body: Draft): Promise<RecordContents> {
  checkByFeel(body)
  const basis = await basisOf(work, place, body.bearing.bearingTypeId)
  checkGoesOn(place, basis)
  const readings = takeReadings(body.readings, basis.type.boreMm)
  await registerBearing(work, body.bearing)
  const { method, driveUpMm } = body
  return {
    bearingId: body.bearing.id,
    sheet: sheetOf(body),
    runHours: body.meterShowsHours,
    noHoursReason: body.noHoursReason,
    removal: body.removal,
    planId: body.planId,
    clearanceClass: basis.type.clearanceClass,
    readings,
    judgement: judgementOf({
      method,
      readings,
      driveUpMm,
      bearing: basis.type,
      bands: basis.bands,
      settings: basis.settings,
    }),
  }
}
