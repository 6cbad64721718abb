import { judgementOf } from '@shaftbook/contract/judge-mount'
import type { MountRecord } from '@shaftbook/contract/mounts'
import type { RemovalDraft } from '@shaftbook/contract/removals'
import { v7 as uuidv7 } from 'uuid'
import { fieldError } from '../domain-error.ts'
import { signInitialFill } from '../greasing/initial-fill.ts'
import type { Place } from '../meters/place.ts'
import { hoursOrReason, positionsMoved, type RunHoursAt } from '../meters/run-hours.ts'
import { dayOf, momentOf, type Work } from '../meters/work.ts'
import type { End } from '../removals/end-of-life.ts'
import { bearingName, checkLeaves, endStay } from '../removals/removals.service.ts'
import { findOpenFitment } from '../removals/removals.store.ts'
import { refreshPositions } from '../bookkeeping/refresh.ts'
import { basisOf, checkClass, checkFree, checkGoesOn, type MountBasis } from './fitting.ts'
import { openFitment } from './fitting.store.ts'
import { initialFillOf } from './initial-fill.ts'
import { signRecord } from './mounts.store.ts'
import { checkSignable } from './signable.ts'

/**
 * Signs a draft: the bearing that was in leaves, the new one's stay opens, its first fill is written down, due date and
 * flags follow. All in the transaction of the work.
 */
export async function signDraft(work: Work, place: Place, draft: MountRecord): Promise<void> {
  if (place.retiredAt) {
    const message = `${place.tag} is retired since ${dayOf(work, place.retiredAt)}: no bearing goes on there.`
    throw fieldError('not-allowed-here', 'positionId', message)
  }
  const mountedAt = momentOf(work, draft.mountedAt, 'mountedAt')
  const basis = await basisOf(work, place, draft.bearing.bearingTypeId)
  checkGoesOn(place, basis)
  checkClass(work, basis)
  const judgement = judgeRecord(draft, basis)
  checkSignable({ ...draft, bands: basis.bands }, judgement)
  await checkFree(work, place, draft.bearing.id)
  const entry = { meterShowsHours: draft.runHours, noHoursReason: draft.noHoursReason }
  const hours = await hoursOrReason(work, place, mountedAt, entry)
  await emptyPosition(work, place, { mountedAt, hours, noHoursReason: draft.noHoursReason, removal: draft.removal })
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
  const fill = initialFillOf(draft)
  if (fill) await signInitialFill(work, place, { ...fill, greasedAt: mountedAt, hours })
  await refreshPositions(work.tx, await positionsMoved(work.tx, place, hours), work.now, 'mount signed')
}

export function judgeRecord(record: MountRecord, { type, bands, settings }: MountBasis) {
  const { method, readings, driveUpMm } = record
  return judgementOf({ method, readings, driveUpMm, bearing: type, bands, settings })
}

interface Leaving {
  readonly mountedAt: Date
  readonly hours: RunHoursAt
  readonly noHoursReason: string | null
  readonly removal: MountRecord['removal']
}

/** Ends the stay of the bearing that is in, for the reason told with the mount. */
async function emptyPosition(work: Work, place: Place, leaving: Leaving): Promise<void> {
  const { mountedAt, hours, noHoursReason, removal } = leaving
  const fitted = await findOpenFitment(work.tx, place.positionId)
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
