import { judgementOf } from '@shaftbook/contract/judge-mount'
import type { Judgement } from '@shaftbook/contract/judgement'
import type { MountRecord } from '@shaftbook/contract/mounts'
import type { RemovalDraft } from '@shaftbook/contract/removals'
import { v7 as uuidv7 } from 'uuid'
import { fieldError } from '../domain-error.ts'
import { signInitialFill } from '../greasing/initial-fill.ts'
import type { Place } from '../meters/place.ts'
import { hoursOrReason, positionsMoved, type RunHoursAt } from '../meters/run-hours.ts'
import { dayOf, momentOf, type Work } from '../meters/work.ts'
import type { End } from '../removals/end-of-life.ts'
import { bearingName } from '../removals/bearing-name.ts'
import { checkLeaves, endStay } from '../removals/removals.service.ts'
import { findOpenFitment, type OpenFitment } from '../removals/removals.store.ts'
import { checkSameStay } from '../removals/same-stay.ts'
import { refreshPositions } from '../bookkeeping/refresh.ts'
import { closePlanBy } from '../mount-plans/mount-plans.service.ts'
import { checkApplies } from './applies.ts'
import { checkSameLimits, type Seen } from './changed-since.ts'
import { addFittedParts } from './fitted-parts.store.ts'
import { basisOf, checkClass, checkFree, checkGoesOn } from './fitting.ts'
import { openFitment } from './fitting.store.ts'
import { initialFillOf } from './initial-fill.ts'
import { checkKit } from './kit-check.ts'
import { findSeat } from './seat.store.ts'
import { signRecord } from './mounts.store.ts'
import { checkSignable } from './signable.ts'

/**
 * Signs a draft: the bearing that was in leaves, the new one's stay opens, what was fitted and its first fill are written
 * down, the plan is closed, due date and flags follow. All in the transaction of the work.
 */
export async function signDraft(work: Work, place: Place, draft: MountRecord, seen: Seen): Promise<void> {
  if (place.retiredAt) {
    const message = `${place.tag} is retired since ${dayOf(work, place.retiredAt)}: no bearing goes on there.`
    throw fieldError('not-allowed-here', 'positionId', message)
  }
  const mountedAt = momentOf(work, draft.mountedAt, 'mountedAt')
  const fitted = await findOpenFitment(work.tx, place.positionId)
  await checkSameStay(work, place, fitted, { leavingFitmentId: seen.leavingFitmentId, begun: 'sheet' })
  const judgement = await judgeSheet(work, place, draft, seen)
  await checkFree(work, place, draft.bearing.id)
  const entry = { meterShowsHours: draft.runHours, noHoursReason: draft.noHoursReason }
  const hours = await hoursOrReason(work, place, mountedAt, entry)
  await emptyPosition(work, place, fitted, {
    mountedAt,
    hours,
    noHoursReason: draft.noHoursReason,
    removal: draft.removal,
  })
  const fitmentId = await openFitment(work.tx, {
    positionId: place.positionId,
    bearingId: draft.bearing.id,
    fittedAt: mountedAt,
    startRunHours: hours.totalHours,
    mountRecordId: draft.id,
  })
  await signRecord(work.tx, draft.id, {
    fitmentId,
    mountedAt,
    judgement,
    runHours: hours.totalHours,
    noHoursReason: hours.totalHours === null ? draft.noHoursReason : null,
    signedAt: work.now,
    signedBy: work.personId,
  })
  await addFittedParts(work.tx, { mountRecordId: draft.id, positionId: place.positionId }, draft.details.kitCheck)
  if (draft.planId !== null) await closePlanBy(work, place, draft.planId, draft.id)
  const fill = initialFillOf(draft)
  if (fill) await signInitialFill(work, place, { ...fill, greasedAt: mountedAt, hours })
  await refreshPositions(work.tx, await positionsMoved(work.tx, place, hours), work.now, 'mount signed', mountedAt)
}

/** Judges what the sheet says by the book of today, and refuses what cannot be signed so. */
async function judgeSheet(work: Work, place: Place, draft: MountRecord, seen: Seen): Promise<Judgement> {
  const basis = await basisOf(work, place, draft.bearing.bearingTypeId)
  const { type, bands, settings } = basis
  const seat = await findSeat(work.tx, place.positionId)
  checkGoesOn(place, basis)
  checkClass(work, basis)
  checkSameLimits(place, basis, seat, seen)
  checkApplies(draft, seat, type)
  const { method, readings, driveUpMm } = draft
  const judgement = judgementOf({ method, readings, driveUpMm, bearing: type, bands, settings })
  checkSignable({ ...draft, bands }, judgement)
  checkKit(draft.details, seat, basis)
  return judgement
}

interface Leaving {
  readonly mountedAt: Date
  readonly hours: RunHoursAt
  readonly noHoursReason: string | null
  readonly removal: MountRecord['removal']
}

/** Ends the stay of the bearing that is in, for the reason told with the mount. */
async function emptyPosition(
  work: Work,
  place: Place,
  fitted: OpenFitment | undefined,
  leaving: Leaving,
): Promise<void> {
  const { mountedAt, hours, noHoursReason, removal } = leaving
  if (!fitted && removal) {
    const message = `Nothing is fitted at ${place.tag}, so nothing can leave it: take the removal out of the record.`
    throw fieldError('nothing-fitted', 'removal', message)
  }
  if (!fitted) return
  if (!removal) {
    const message = `${place.tag} carries ${bearingName(fitted)} since ${dayOf(work, fitted.fittedAt)}: tell with the mount why it was taken out.`
    throw fieldError('position-occupied', 'removal', message)
  }
  checkLeaves(work, place, fitted, mountedAt, 'mountedAt')
  const end = { removalId: uuidv7(), removedAt: mountedAt, hours, noHoursReason, told: wholeRemoval(removal) }
  await endStay(work, place, fitted, end, 'removal.')
}

/** Refuses to end a stay for a removal of which too little is told. */
function wholeRemoval(told: RemovalDraft): End {
  const { endKind } = told
  if (endKind === null) {
    throw fieldError('request-invalid', 'removal.endKind', 'Say how the bearing that comes out ended.')
  }
  if (told.observer === '') {
    throw fieldError('request-invalid', 'removal.observer', 'Enter who looked at the bearing that came out.')
  }
  return { ...told, endKind }
}
