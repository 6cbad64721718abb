import { takesGrease, type Greasing, type GreasingCorrection, type NewGreasing } from '@shaftbook/contract/greasing'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { receive } from '../db/receipts.ts'
import { fieldError, notFound } from '../domain-error.ts'
import { holdPlace, type Place } from '../meters/place.ts'
import { correctHours, hoursIfKnown, positionsMoved, type RunHoursAt } from '../meters/run-hours.ts'
import { doWork, momentOf, type Work, type Worker } from '../meters/work.ts'
import { settleChange } from '../grease-changes/settle-change.ts'
import { refreshPositions } from '../bookkeeping/refresh.ts'
import { addGreasing, findGreasing, isCorrected, type GreasedBy, type NewGreasingRow } from './greasing.store.ts'
import { checkedRow } from './checked-greasing.ts'

type Correction = z.output<typeof GreasingCorrection>

/** Signs a greasing: it lands at its own time, and the position's due date and flags follow at once. */
export function createGreasing(context: Context, worker: Worker, body: NewGreasing): Promise<Greasing> {
  return doWork(context, worker, async (work) => {
    if ((await receive(work.tx, 'create-greasing', body.id, body)) === 'repeat') return await greasing(work, body.id)
    await signGreasing(work, body, {})
    return await greasing(work, body.id)
  })
}

/** Signs a greasing within an act, and brings up to date what hangs on it. */
export async function signGreasing(work: Work, body: NewGreasing, by: GreasedBy): Promise<Omit<NewGreasingRow, 'id'>> {
  const place = await holdPlace(work.tx, body.positionId)
  const greasedAt = momentOf(work, body.greasedAt, 'greasedAt')
  const hours = await hoursIfKnown(work, place, greasedAt, body.meterShowsHours)
  const row = await checkedRow(work, place, { ...body, greasedAt, hours })
  await addGreasing(work.tx, { ...row, ...by, id: body.id })
  await settleChange(work, place.positionId)
  const moved = await positionsMoved(work.tx, place, hours)
  await refreshPositions(work.tx, moved, work.now, 'greasing signed', greasedAt)
  return row
}

/** Corrects or withdraws a greasing by a further record; the latest one counts. */
export function correctGreasing(
  context: Context,
  worker: Worker,
  wrongId: string,
  body: Correction,
): Promise<Greasing> {
  return doWork(context, worker, async (work) => {
    const request = { ...body, correctsId: wrongId }
    if ((await receive(work.tx, 'correct-greasing', body.id, request)) === 'repeat')
      return await greasing(work, body.id)
    const wrong = await greasing(work, wrongId)
    const { task, kind, greaseId: signedGreaseId } = wrong
    checkDoseTold(wrong, body)
    const place = await holdPlace(work.tx, wrong.positionId)
    if (await isCorrected(work.tx, wrongId)) {
      throw fieldError('already-corrected', 'id', 'This greasing was corrected already: correct the latest record.')
    }
    const greasedAt = momentOf(work, body.greasedAt, 'greasedAt')
    const { withdrawn, correctionReason } = body
    const hours = await correctedHours(work, place, wrong, body, greasedAt)
    const row = await checkedRow(work, place, {
      ...body,
      greasedAt,
      hours,
      task,
      kind,
      withdrawn,
      signedGreaseId,
    })
    await addGreasing(work.tx, { ...row, id: body.id, correctsId: wrongId, correctionReason, withdrawn })
    await settleChange(work, place.positionId)
    const how = withdrawn ? 'greasing withdrawn' : 'greasing corrected'
    const before = new Date(wrong.greasedAt)
    const since = before < greasedAt ? before : greasedAt
    await refreshPositions(work.tx, await positionsMoved(work.tx, place, hours), work.now, how, since)
    return await greasing(work, body.id)
  })
}

/** A correction tells of a dose where the task has one. */
function checkDoseTold({ task }: Greasing, { doseG }: Correction): void {
  if (takesGrease(task) === (doseG !== null)) return
  const message = takesGrease(task) ? 'Enter the dose in grams.' : 'This was no greasing: leave the dose empty.'
  throw fieldError('not-allowed-here', 'doseG', message)
}

/** The hours at a corrected greasing; where it tells of other hours than before, the reading that it went by is corrected. */
async function correctedHours(
  work: Work,
  place: Place,
  wrong: Greasing,
  body: Correction,
  at: Date,
): Promise<RunHoursAt> {
  const { withdrawn, meterShowsHours, correctionReason } = body
  if (withdrawn || meterShowsHours === null) return await hoursIfKnown(work, place, at, null)
  const before = { at: new Date(wrong.greasedAt), totalHours: wrong.runHours }
  const entry = { meterShowsHours, noHoursReason: null }
  return await correctHours(work, place, { wrong: before, at, entry, correctionReason })
}

async function greasing(work: Work, id: string): Promise<Greasing> {
  const found = await findGreasing(work.tx.sql, work.tx.scope.siteId, id)
  if (!found) throw notFound('greasing')
  return found
}
