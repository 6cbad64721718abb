import type { Greasing, GreasingCorrection, NewGreasing } from '@shaftbook/contract/greasing'
import { v7 as uuidv7 } from 'uuid'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { receive } from '../db/receipts.ts'
import { fieldError, notFound } from '../domain-error.ts'
import { holdPlace, positionsOfMachine, type Place } from '../meters/place.ts'
import { hoursIfKnown, usageBefore, type RunHoursAt } from '../meters/run-hours.ts'
import { dayOf, doWork, momentOf, type Work, type Worker } from '../meters/work.ts'
import { refreshPositions } from '../upkeep/refresh.ts'
import { loadSite } from '../upkeep/site.ts'
import { addGreasing, findGreasing, findMoment, isCorrected, type NewGreasingRow } from './greasing.store.ts'
import { findGreaseName, findPlanAt, type PlanInForce } from './plans.store.ts'
import { windowResult } from './window.ts'

type Correction = z.output<typeof GreasingCorrection>
type Sheet = Pick<NewGreasing, 'greaseId' | 'doseG' | 'meterShowsHours' | 'note'>

/** Signs a greasing: it lands at its own time, and the position's due date and flags follow at once. */
export function createGreasing(context: Context, worker: Worker, body: NewGreasing): Promise<Greasing> {
  return doWork(context, worker, async (work) => {
    if ((await receive(work.tx, 'create-greasing', body.id, body)) === 'repeat') return await greasing(work, body.id)
    const place = await holdPlace(work.tx, body.positionId)
    const greasedAt = momentOf(work, body.greasedAt, 'greasedAt')
    const hours = await hoursIfKnown(work, place, greasedAt, body.meterShowsHours)
    const row = await judgedRow(work, place, { ...body, greasedAt, hours })
    await addGreasing(work.tx, { ...row, id: body.id })
    await refresh(work, place, hours, 'greasing signed')
    return await greasing(work, body.id)
  })
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
    const { positionId, kind } = await greasing(work, wrongId)
    const place = await holdPlace(work.tx, positionId)
    if (await isCorrected(work.tx, wrongId)) {
      throw fieldError('already-corrected', 'id', 'This greasing was corrected already: correct the latest record.')
    }
    const greasedAt = momentOf(work, body.greasedAt, 'greasedAt')
    const { withdrawn, correctionReason } = body
    const shown = withdrawn ? null : body.meterShowsHours
    const hours = await hoursIfKnown(work, place, greasedAt, shown)
    const row = await judgedRow(work, place, { ...body, greasedAt, hours, kind, without: wrongId, withdrawn })
    await addGreasing(work.tx, { ...row, id: body.id, correctsId: wrongId, correctionReason, withdrawn })
    await refresh(work, place, hours, withdrawn ? 'greasing withdrawn' : 'greasing corrected')
    return await greasing(work, body.id)
  })
}

export interface InitialFill extends Sheet {
  readonly greasedAt: Date
  readonly hours: RunHoursAt
}

/** Writes down the first fill of a bearing that is just being mounted; the mount brings the position up to date. */
export async function signInitialFill(work: Work, place: Place, fill: InitialFill): Promise<void> {
  await addGreasing(work.tx, { ...(await judgedRow(work, place, { ...fill, kind: 'initial-fill' })), id: uuidv7() })
}

interface Judged extends Sheet {
  readonly kind: Greasing['kind']
  readonly greasedAt: Date
  readonly hours: RunHoursAt
  /** The greasing that this one corrects. */
  readonly without?: string
  readonly withdrawn?: boolean
}

async function judgedRow(work: Work, place: Place, entry: Judged): Promise<Omit<NewGreasingRow, 'id'>> {
  const { kind, greasedAt, doseG, note, hours } = entry
  const plan = await findPlanAt(work.tx, place.positionId, greasedAt)
  const greaseId = await greaseOf(work, place, plan, entry.greaseId)
  const judgedPlan = kind === 'regreasing' && !entry.withdrawn ? plan : undefined
  return {
    positionId: place.positionId,
    planId: plan?.id ?? null,
    kind,
    greasedAt,
    runHours: hours.totalHours,
    hoursSource: hours.source,
    greaseId,
    doseG,
    plannedDoseG: judgedPlan?.doseG ?? null,
    windowResult: await judgeWindow(work, place, judgedPlan, entry),
    note,
    signedAt: work.now,
    signedBy: work.personId,
  }
}

/** How the plan was met. A greasing of an empty position is refused: it is most likely another position's. */
async function judgeWindow(
  work: Work,
  place: Place,
  plan: PlanInForce | undefined,
  entry: Judged,
): Promise<Greasing['windowResult']> {
  const { greasedAt, doseG, hours } = entry
  const { fittedAt, last } = await findMoment(work.tx, place.positionId, greasedAt, entry.without)
  if (entry.withdrawn) return 'no-window'
  if (!fittedAt) {
    const message = `Nothing was fitted at ${place.tag} on ${dayOf(work, greasedAt)}: check the position and the date, or log the mount first.`
    throw fieldError('nothing-fitted', 'positionId', message)
  }
  if (!plan) return 'no-window'
  const { settings } = await loadSite(work.tx, work.now)
  const usage = {
    today: dayOf(work, greasedAt),
    runHours: hours.totalHours,
    hoursPerDay: await usageBefore(work, place, greasedAt),
  }
  const before = last && { date: dayOf(work, last.greasedAt), runHours: last.runHours }
  return windowResult({ plan, last: before, usage, doseG, settings })
}

/** The plan's grease, or the one that was named where there is no plan. Another than the plan's is refused. */
async function greaseOf(
  work: Work,
  place: Place,
  plan: PlanInForce | undefined,
  greaseId: string | null,
): Promise<string> {
  if (plan && (greaseId === null || greaseId === plan.greaseId)) return plan.greaseId
  if (greaseId === null) {
    const message = `${place.tag} has no grease plan: say which grease went in, and ask the engineer for a plan.`
    throw fieldError('grease-not-planned', 'greaseId', message)
  }
  const name = await findGreaseName(work.tx, greaseId)
  if (name === undefined) throw notFound('grease', 'greaseId')
  if (!plan) return greaseId
  const message = `The plan of ${place.tag} is ${plan.greaseName}, not ${name}: greases must not be mixed. Stop and ask the engineer, who changes the plan if ${name} is right.`
  throw fieldError('grease-not-planned', 'greaseId', message)
}

/** A new reading of the meter moves the due dates of the whole machine. */
async function refresh(work: Work, place: Place, hours: RunHoursAt, how: string): Promise<void> {
  const positions = hours.source === 'meter' ? await positionsOfMachine(work.tx, place.machineId) : [place.positionId]
  await refreshPositions(work.tx, positions, work.now, how)
}

async function greasing(work: Work, id: string): Promise<Greasing> {
  const found = await findGreasing(work.tx.sql, work.tx.scope.siteId, id)
  if (!found) throw notFound('greasing')
  return found
}
