import { takesGrease, type Greasing, type NewGreasing } from '@shaftbook/contract/greasing'
import { fieldError, notFound } from '../domain-error.ts'
import { findOpenChange } from '../grease-changes/grease-changes.store.ts'
import type { Place } from '../meters/place.ts'
import type { RunHoursAt } from '../meters/run-hours.ts'
import { dayOf, type Work } from '../meters/work.ts'
import { findFittedAt, type NewGreasingRow } from './greasing.store.ts'
import { findGreaseName, findPlanAt, isSealedAt, type PlanInForce } from './plans.store.ts'

export type GreasingSheet = Pick<NewGreasing, 'greaseId' | 'doseG' | 'meterShowsHours' | 'note'>

export interface GreasingEntry extends GreasingSheet {
  readonly task: Greasing['task']
  readonly kind: Greasing['kind']
  readonly greasedAt: Date
  readonly hours: RunHoursAt
  /** The grease that the corrected record names: it went in, whatever a later plan asks for. */
  readonly signedGreaseId?: string | null
  readonly withdrawn?: boolean
}

/** A greasing as it is stored: checked against what was fitted and planned at its time. How it met its window comes after. */
export async function checkedRow(work: Work, place: Place, entry: GreasingEntry): Promise<Omit<NewGreasingRow, 'id'>> {
  const { task, kind, greasedAt, doseG, note, hours } = entry
  const plan = await findPlanAt(work.tx, place.positionId, task, greasedAt)
  const judged = kind !== 'initial-fill' && !entry.withdrawn
  if (judged || kind === 'initial-fill') await checkTakesIt(work, place, entry)
  return {
    positionId: place.positionId,
    planId: plan?.id ?? null,
    task,
    kind: task === 'regrease' ? kind : null,
    greasedAt,
    runHours: hours.totalHours,
    hoursSource: hours.source,
    greaseId: takesGrease(task) ? await greaseOf(work, place, plan, entry) : null,
    doseG,
    plannedDoseG: judged ? (plan?.doseG ?? null) : null,
    note,
    signedAt: work.now,
    signedBy: work.personId,
  }
}

/** Work at an empty position is refused: it is most likely another position's. So is grease for a sealed bearing. */
async function checkTakesIt(work: Work, place: Place, entry: GreasingEntry): Promise<void> {
  if (entry.withdrawn) return
  const { positionId, tag } = place
  if ((await findFittedAt(work.tx, positionId, entry.greasedAt)) === null) {
    const message = `Nothing was fitted at ${tag} on ${dayOf(work, entry.greasedAt)}: check the position and the date, or log the mount first.`
    throw fieldError('nothing-fitted', 'positionId', message)
  }
  if (entry.kind === 'initial-fill' || !takesGrease(entry.task)) return
  await checkStripped(work, place, entry)
  if (!(await isSealedAt(work.tx, positionId, entry.greasedAt))) return
  const message = `${tag} is sealed for life and takes no grease: check the position, or ask the engineer for a plan.`
  throw fieldError('not-allowed-here', 'positionId', message)
}

/** What has to be stripped takes no grease before: the two would mix. R-CHG. */
async function checkStripped(
  work: Work,
  { positionId, tag }: Place,
  { greasedAt, signedGreaseId }: GreasingEntry,
): Promise<void> {
  const change = await findOpenChange(work.tx, positionId)
  if (change?.state !== 'strip' || greasedAt < change.stateSince || signedGreaseId) return
  const message = `${tag} is changed over from ${change.fromName} to ${change.toName}: strip, clean and fill it anew first, and log that the change-over is finished.`
  throw fieldError('grease-not-planned', 'greaseId', message)
}

/** The plan's grease, or the one that was named where there is no plan. Another than the plan's is refused. */
async function greaseOf(
  work: Work,
  place: Place,
  plan: PlanInForce | undefined,
  { greaseId, signedGreaseId, withdrawn }: GreasingEntry,
): Promise<string> {
  if (signedGreaseId && (withdrawn || greaseId === signedGreaseId)) return signedGreaseId
  const planned = plan?.greaseId ?? null
  if (planned !== null && (greaseId === null || greaseId === planned)) return planned
  if (greaseId === null) {
    const message = `${place.tag} has no grease plan: say which grease went in, and ask the engineer for a plan.`
    throw fieldError('grease-not-planned', 'greaseId', message)
  }
  const name = await findGreaseName(work.tx, greaseId)
  if (name === undefined) throw notFound('grease', 'greaseId')
  if (planned === null) return greaseId
  const message = `The plan of ${place.tag} is ${plan?.greaseName}, not ${name}: greases must not be mixed. Stop and ask the engineer, who changes the plan if ${name} is right.`
  throw fieldError('grease-not-planned', 'greaseId', message)
}
