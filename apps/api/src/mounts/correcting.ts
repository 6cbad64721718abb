import { judgementOf } from '@shaftbook/contract/judge-mount'
import type { MountCorrection, MountRecord } from '@shaftbook/contract/mounts'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { receive } from '../db/receipts.ts'
import { DomainError, fieldError } from '../domain-error.ts'
import { correctInitialFill } from '../greasing/initial-fill.ts'
import type { Place } from '../meters/place.ts'
import { dayOf, doWork, momentOf, type Work, type Worker } from '../meters/work.ts'
import { lifeHours } from '../removals/end-of-life.ts'
import { refreshPositions } from '../upkeep/refresh.ts'
import { basisOf } from './fitting.ts'
import { correctStay, findStay } from './fitting.store.ts'
import { initialFillOf } from './initial-fill.ts'
import { addRecord, sheetOf, signRecord } from './mounts.store.ts'
import { holdPlaceOf, recordOf } from './mounts.service.ts'
import { checkByFeel, checkSignable } from './signable.ts'
import { takeReadings } from './typed-readings.ts'

type Correction = z.output<typeof MountCorrection>

/** Corrects a signed record by a further one, signed at once: the same bearing's same stay, judged anew. */
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
    await addCorrection(work, place, wrong, { body, fitmentId, mountedAt })
    await moveStay(work, place, { fitmentId, mountRecordId: body.id, fittedAt: mountedAt })
    await correctInitialFill(work, place, {
      before: new Date(wrong.mountedAt),
      greasedAt: mountedAt,
      fill: initialFillOf(body),
      reason: body.correctionReason,
    })
    await refreshPositions(work.tx, [place.positionId], work.now, 'mount corrected')
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

interface Correcting {
  readonly body: Correction
  readonly fitmentId: string
  readonly mountedAt: Date
}

async function addCorrection(work: Work, place: Place, wrong: MountRecord, correcting: Correcting): Promise<void> {
  const { body, fitmentId, mountedAt } = correcting
  checkByFeel(body)
  const { type, bands, settings } = await basisOf(work, place, wrong.bearing.bearingTypeId)
  const readings = takeReadings(body.readings, type.boreMm)
  const { method, driveUpMm } = body
  const judgement = judgementOf({ method, readings, driveUpMm, bearing: type, bands, settings })
  checkSignable({ ...body, readings, bands }, judgement)
  const { runHours, noHoursReason } = wrong
  await addRecord(work.tx, {
    id: body.id,
    positionId: place.positionId,
    bearingId: wrong.bearing.id,
    sheet: sheetOf(body),
    runHours,
    noHoursReason,
    clearanceClass: type.clearanceClass,
    readings,
    judgement,
    createdBy: work.personId,
    createdAt: work.now,
    correctsId: wrong.id,
    correctionReason: body.correctionReason,
  })
  const signature = { signedAt: work.now, signedBy: work.personId }
  await signRecord(work.tx, body.id, { fitmentId, mountedAt, runHours, noHoursReason, judgement, ...signature })
}

/** The stay starts when the correction says; estimated hours of one that has ended follow. */
async function moveStay(
  work: Work,
  place: Place,
  change: { fitmentId: string; mountRecordId: string; fittedAt: Date },
): Promise<void> {
  const { fitmentId, mountRecordId, fittedAt } = change
  const { removedAt, ...stay } = await findStay(work.tx, fitmentId)
  if (removedAt && removedAt <= fittedAt) {
    const message = `The bearing left on ${dayOf(work, removedAt)}, so it was fitted before: check the date and time.`
    throw fieldError('removal-before-mounting', 'mountedAt', message)
  }
  const life = removedAt ? lifeHours({ ...stay, fittedAt, removedAt, hoursPerDay: place.hoursPerDay }) : {}
  await correctStay(work.tx, fitmentId, { mountRecordId, fittedAt, ...life })
}
