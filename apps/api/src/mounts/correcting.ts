import { stayHours } from '@shaftbook/bearing/run-hours'
import { judgementOf } from '@shaftbook/contract/judge-mount'
import type { Judgement } from '@shaftbook/contract/judgement'
import type { MountCorrection, MountRecord } from '@shaftbook/contract/mounts'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { receive } from '../db/receipts.ts'
import { DomainError, fieldError } from '../domain-error.ts'
import { correctInitialFill } from '../greasing/initial-fill.ts'
import type { Place } from '../meters/place.ts'
import { correctHours, positionsMoved, type RunHoursAt } from '../meters/run-hours.ts'
import { dayOf, doWork, momentOf, type Work, type Worker } from '../meters/work.ts'
import { refreshPositions } from '../bookkeeping/refresh.ts'
import { putOffMountFlags } from './decisions.store.ts'
import { addFittedParts } from './fitted-parts.store.ts'
import { basisOf } from './fitting.ts'
import { correctStay, findStay, findStayBefore } from './fitting.store.ts'
import { initialFillOf } from './initial-fill.ts'
import { addRecord, sheetOf, signRecord } from './mounts.store.ts'
import { holdPlaceOf, recordOf } from './mounts.service.ts'
import { checkByFeel, checkSignable } from './signable.ts'
import { takeReadings } from './typed-readings.ts'

type Correction = z.output<typeof MountCorrection>

/**
 * Corrects a signed record by a further one, signed at once: the same bearing's same stay, judged anew. It tells what was
 * truly done, so that parts are written down as they are told and not refused.
 */
export function correctMount(
  context: Context,
  worker: Worker,
  wrongId: string,
  body: Correction,
): Promise<MountRecord> {
  return doWork(context, worker, async (work) => {
    const request = { ...body, correctsId: wrongId }
    if ((await receive(work.tx, 'correct-mount-record', body.id, request)) === 'repeat')
      return await recordOf(work, body.id)
    const place = await holdPlaceOf(work, wrongId)
    const wrong = await recordOf(work, wrongId)
    const fitmentId = correctable(wrong)
    const mountedAt = momentOf(work, body.mountedAt, 'mountedAt')
    const hours = await hoursOf(work, place, wrong, body, mountedAt)
    const judgement = await addCorrection(work, place, wrong, { body, fitmentId, mountedAt, hours })
    // what was accepted until a day were other numbers
    if (!sameNumbers(wrong.judgement, judgement)) await putOffMountFlags(work.tx, fitmentId, null)
    await moveStay(work, place, { fitmentId, mountRecordId: body.id, fittedAt: mountedAt, hours })
    if (hours) await moveStayBefore(work, place, new Date(wrong.mountedAt), hours)
    await correctInitialFill(work, place, {
      before: { at: new Date(wrong.mountedAt), runHours: wrong.runHours },
      greasedAt: mountedAt,
      hours,
      fill: initialFillOf(body),
      reason: body.correctionReason,
    })
    const moved = hours ? await positionsMoved(work.tx, place, hours) : [place.positionId]
    const before = new Date(wrong.mountedAt)
    const since = before < mountedAt ? before : mountedAt
    await refreshPositions(work.tx, moved, work.now, 'mount corrected', since)
    return await recordOf(work, body.id)
  })
}

/** The stay of a record that may be corrected: signed, and the latest of its mount. */
function correctable(record: MountRecord): string {
  if (record.correctedById !== null) {
    throw fieldError('already-corrected', 'id', 'This record was corrected already: correct the latest one.')
  }
  if (record.fitmentId === null) {
    throw new DomainError('not-allowed-here', 'A draft is changed, not corrected: change it, then sign it.')
  }
  return record.fitmentId
}

/** The machine's hours at the mount where the correction tells of them; null where they stay as they were. */
async function hoursOf(
  work: Work,
  place: Place,
  wrong: MountRecord,
  body: Correction,
  at: Date,
): Promise<RunHoursAt | null> {
  const { meterShowsHours, noHoursReason, correctionReason } = body
  if (meterShowsHours === null && noHoursReason === null) return null
  const before = { at: new Date(wrong.mountedAt), totalHours: wrong.runHours }
  return await correctHours(work, place, { wrong: before, at, entry: body, correctionReason })
}

interface Correcting {
  readonly body: Correction
  readonly fitmentId: string
  readonly mountedAt: Date
  readonly hours: RunHoursAt | null
}

async function addCorrection(work: Work, place: Place, wrong: MountRecord, correcting: Correcting): Promise<Judgement> {
  const { body, fitmentId, mountedAt, hours } = correcting
  checkByFeel(body)
  const { type, bands, settings } = await basisOf(work, place, wrong.bearing.bearingTypeId)
  const readings = takeReadings(body.readings, type.boreMm)
  const { method, driveUpMm } = body
  const judgement = judgementOf({ method, readings, driveUpMm, bearing: type, bands, settings })
  checkSignable({ ...body, readings, bands }, judgement)
  const runHours = hours ? hours.totalHours : wrong.runHours
  const noHoursReason = hours ? (runHours === null ? body.noHoursReason : null) : wrong.noHoursReason
  await addRecord(work.tx, {
    id: body.id,
    positionId: place.positionId,
    bearingId: wrong.bearing.id,
    sheet: sheetOf(body),
    runHours,
    noHoursReason,
    removal: null,
    planId: wrong.planId,
    clearanceClass: type.clearanceClass,
    readings,
    judgement,
    createdBy: work.personId,
    createdAt: work.now,
    correctsId: wrong.id,
    correctionReason: body.correctionReason,
  })
  const signature = { signedAt: work.now, signedBy: work.personId }
  await addFittedParts(work.tx, { mountRecordId: body.id, positionId: place.positionId }, body.details.kitCheck)
  await signRecord(work.tx, body.id, { fitmentId, mountedAt, runHours, noHoursReason, judgement, ...signature })
  return judgement
}

function sameNumbers(one: Judgement, other: Judgement): boolean {
  return (
    one.verdict === other.verdict &&
    one.residual === other.residual &&
    one.reductionUm === other.reductionUm &&
    one.mountedMeanUm === other.mountedMeanUm
  )
}

interface MovedStay {
  readonly fitmentId: string
  readonly mountRecordId: string
  readonly fittedAt: Date
  readonly hours: RunHoursAt | null
}

/** The stay starts when and at the hours that the correction says; the life of one that has ended follows. */
async function moveStay(work: Work, place: Place, moved: MovedStay): Promise<void> {
  const { fitmentId, mountRecordId, fittedAt, hours } = moved
  const { removedAt, endRunHours, ...before } = await findStay(work.tx, fitmentId)
  const startRunHours = hours ? hours.totalHours : before.startRunHours
  if (removedAt && removedAt <= fittedAt) {
    const message = `The bearing left on ${dayOf(work, removedAt)}, so it was fitted before: check the date and time.`
    throw fieldError('removal-before-mounting', 'mountedAt', message)
  }
  const { hoursPerDay } = place
  const life = removedAt ? stayHours({ fittedAt, until: removedAt, startRunHours, endRunHours, hoursPerDay }) : {}
  await correctStay(work.tx, fitmentId, { mountRecordId, fittedAt, startRunHours, ...life })
}

/** The bearing that came out with the mount ended at the same hours. */
async function moveStayBefore(work: Work, place: Place, removedAt: Date, hours: RunHoursAt): Promise<void> {
  const before = await findStayBefore(work.tx, place.positionId, removedAt)
  if (!before) return
  const { id, ...stay } = before
  const endRunHours = hours.totalHours
  const life = stayHours({ ...stay, until: removedAt, endRunHours, hoursPerDay: place.hoursPerDay })
  await correctStay(work.tx, id, { endRunHours, ...life })
}
