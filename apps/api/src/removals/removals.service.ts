import { stayHours } from '@shaftbook/bearing/run-hours'
import type { NewRemoval, Removal, RemovalCorrection } from '@shaftbook/contract/removals'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import type { Sql } from '../db/database.ts'
import { receive } from '../db/receipts.ts'
import { fieldError, notFound } from '../domain-error.ts'
import { holdPlace, type Place } from '../meters/place.ts'
import { hoursOrReason, positionsMoved, type RunHoursAt } from '../meters/run-hours.ts'
import { dayOf, doWork, momentOf, type Work, type Worker } from '../meters/work.ts'
import { refreshPositions } from '../bookkeeping/refresh.ts'
import { bearingName } from './bearing-name.ts'
import { checkEnd, modeTerm, type End } from './end-of-life.ts'
import {
  addRemoval,
  closeFitment,
  findOpenFitment,
  findStoredRemoval,
  isCorrected,
  listStoredRemovals,
  nameRemoval,
  type OpenFitment,
  type RemovalQuery,
} from './removals.store.ts'
import { checkSameStay } from './same-stay.ts'

export async function listRemovals(sql: Sql, siteId: string, query: RemovalQuery) {
  const { items, nextCursor } = await listStoredRemovals(sql, siteId, query)
  return { items: items.map((item) => ({ ...item, modeTerm: modeTerm(item.modeClause) })), nextCursor }
}

export async function readRemoval(sql: Sql, siteId: string, id: string): Promise<Removal> {
  const stored = await findStoredRemoval(sql, siteId, id)
  if (!stored) throw notFound('removal')
  return { ...stored, modeTerm: modeTerm(stored.modeClause) }
}

/** Signs that the bearing left its position: its stay ends. */
export function createRemoval(context: Context, worker: Worker, body: NewRemoval): Promise<Removal> {
  return doWork(context, worker, async (work) => {
    if ((await receive(work.tx, 'create-removal', body.id, body)) === 'repeat') return await removal(work, body.id)
    const place = await holdPlace(work.tx, body.positionId)
    const removedAt = momentOf(work, body.removedAt, 'removedAt')
    const fitment = await findOpenFitment(work.tx, place.positionId)
    await checkSameStay(work, place, fitment, { leavingFitmentId: body.leavingFitmentId, begun: 'removal' })
    if (!fitment) {
      const message = `No bearing is fitted at ${place.tag}: check the position, or log the mount first.`
      throw fieldError('nothing-fitted', 'positionId', message)
    }
    checkLeaves(work, place, fitment, removedAt, 'removedAt')
    const hours = await hoursOrReason(work, place, removedAt, body)
    const { endKind, modeClause, cause, detection, evidence, observer } = body
    const told = { endKind, modeClause, cause, detection, evidence, observer }
    const end = { removalId: body.id, removedAt, hours, noHoursReason: body.noHoursReason, told }
    await endStay(work, place, fitment, end, '')
    await refreshPositions(work.tx, await positionsMoved(work.tx, place, hours), work.now, 'bearing removed', removedAt)
    return await removal(work, body.id)
  })
}

/** Corrects what a removal says by a further record; the bearing's stay keeps its time and hours. */
export function correctRemoval(
  context: Context,
  worker: Worker,
  wrongId: string,
  body: z.output<typeof RemovalCorrection>,
): Promise<Removal> {
  return doWork(context, worker, async (work) => {
    const request = { ...body, correctsId: wrongId }
    if ((await receive(work.tx, 'correct-removal', body.id, request)) === 'repeat') return await removal(work, body.id)
    const wrong = await removal(work, wrongId)
    await holdPlace(work.tx, wrong.positionId)
    if (await isCorrected(work.tx, wrongId)) {
      throw fieldError('already-corrected', 'id', 'This removal was corrected already: correct the latest record.')
    }
    checkEnd(body)
    const { fitmentId, positionId, runHours, noHoursReason } = wrong
    await addRemoval(work.tx, {
      ...body,
      correctsId: wrongId,
      fitmentId,
      positionId,
      removedAt: new Date(wrong.removedAt),
      runHours,
      noHoursReason,
      signedAt: work.now,
      signedBy: work.personId,
    })
    await nameRemoval(work.tx, fitmentId, body.id)
    await refreshPositions(work.tx, [positionId], work.now, 'removal corrected')
    return await removal(work, body.id)
  })
}

/** Refuses that a bearing leaves before or while it was fitted. */
export function checkLeaves(work: Work, place: Place, fitment: OpenFitment, removedAt: Date, path: string): void {
  if (removedAt > fitment.fittedAt) return
  const message = `${bearingName(fitment)} was fitted at ${place.tag} on ${dayOf(work, fitment.fittedAt)} and can't leave on or before that moment: check the date and time.`
  throw fieldError('removal-before-mounting', path, message)
}

export interface StayEnd {
  readonly removalId: string
  readonly removedAt: Date
  readonly hours: RunHoursAt
  readonly noHoursReason: string | null
  readonly told: End
}

/** Signs why a bearing leaves and ends its stay. `path` is where the end is told in the request. */
export async function endStay(
  work: Work,
  place: Place,
  fitment: OpenFitment,
  end: StayEnd,
  path: string,
): Promise<void> {
  const { removalId, removedAt, told } = end
  const endRunHours = end.hours.totalHours
  checkEnd(told, path)
  await addRemoval(work.tx, {
    ...told,
    id: removalId,
    fitmentId: fitment.id,
    positionId: place.positionId,
    removedAt,
    runHours: endRunHours,
    noHoursReason: endRunHours === null ? end.noHoursReason : null,
    signedAt: work.now,
    signedBy: work.personId,
  })
  const { fittedAt, startRunHours } = fitment
  const life = stayHours({ fittedAt, until: removedAt, startRunHours, endRunHours, hoursPerDay: place.hoursPerDay })
  await closeFitment(work.tx, fitment.id, { removedAt, endRunHours, removalId, ...life })
}

async function removal(work: Work, id: string): Promise<Removal> {
  return await readRemoval(work.tx.sql, work.tx.scope.siteId, id)
}
