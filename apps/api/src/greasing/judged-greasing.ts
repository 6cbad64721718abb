import type { Greasing, NewGreasing } from '@shaftbook/contract/greasing'
import { fieldError, notFound } from '../domain-error.ts'
import type { Place } from '../meters/place.ts'
import { usageBefore, type RunHoursAt } from '../meters/run-hours.ts'
import { dayOf, type Work } from '../meters/work.ts'
import { loadSite } from '../bookkeeping/site.ts'
import { findMoment, type NewGreasingRow } from './greasing.store.ts'
import { findGreaseName, findPlanAt, type PlanInForce } from './plans.store.ts'
import { windowResult } from './window.ts'

export type GreasingSheet = Pick<NewGreasing, 'greaseId' | 'doseG' | 'meterShowsHours' | 'note'>

export interface GreasingEntry extends GreasingSheet {
  readonly kind: Greasing['kind']
  readonly greasedAt: Date
  readonly hours: RunHoursAt
  /** The greasing that this one corrects. */
  readonly without?: string
  /** The grease that the corrected record names: it went in, whatever a later plan asks for. */
  readonly signedGreaseId?: string
  readonly withdrawn?: boolean
}

/** A greasing as it is stored: checked and judged against the plan that was in force at its time. */
export async function judgedRow(work: Work, place: Place, entry: GreasingEntry): Promise<Omit<NewGreasingRow, 'id'>> {
  const { kind, greasedAt, doseG, note, hours } = entry
  const plan = await findPlanAt(work.tx, place.positionId, greasedAt)
  const greaseId = await greaseOf(work, place, plan, entry)
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
  entry: GreasingEntry,
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
  const before = last && { date: dayOf(work, last.greasedAt), runHours: atMost(last.runHours, hours.totalHours) }
  return windowResult({ plan, last: before, usage, doseG, settings })
}

/** Estimated hours are rounded, so they may lie a little above a reading that came after them. */
function atMost(runHours: number | null, later: number | null): number | null {
  return runHours === null || later === null ? runHours : Math.min(runHours, later)
}

/** The plan's grease, or the one that was named where there is no plan. Another than the plan's is refused. */
async function greaseOf(
  work: Work,
  place: Place,
  plan: PlanInForce | undefined,
  { greaseId, signedGreaseId, withdrawn }: GreasingEntry,
): Promise<string> {
  if (signedGreaseId !== undefined && (withdrawn || greaseId === signedGreaseId)) return signedGreaseId
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
