import { nextGreasing, type DueSettings, defaultDueSettings, type GreasingPlan } from './due.ts'
import { InputError } from './input-error.ts'
import { checkDose } from './grease.ts'
import { daysBetween, type PlainDate } from './plain-date.ts'
import { formula, type Sourced } from './source.ts'

export interface GreasingDone {
  date: PlainDate
  runHours: number | null
  /** What was given and planned, in g; null where it was not recorded. */
  givenG: number | null
  plannedG: number | null
}

export interface Compliance extends Sourced {
  windowsDue: number
  windowsMet: number
  /** Met over due in per cent; null when no window was due yet. */
  percent: number | null
  onTime: number
  early: number
  late: number
  wrongAmount: number
}

/**
 * Compliance of a position's greasings with its plan: due windows met over windows due. A greasing inside the window with
 * 70 to 150 % of the planned dose meets it; a late one meets none and uses up a window for each whole interval that passed;
 * an early one opens the next interval without a window being due. The first greasing opens the first interval. R-COMPL.
 */
export function greasingCompliance(
  plan: GreasingPlan,
  greasings: readonly GreasingDone[],
  now: { today: PlainDate; runHours: number | null; hoursPerDay: number | null },
  settings: DueSettings = defaultDueSettings,
): Compliance {
  requireOrder(greasings)
  const tally = { windowsDue: 0, windowsMet: 0, onTime: 0, early: 0, late: 0, wrongAmount: 0 }
  for (const [index, last] of greasings.entries()) {
    const next = greasings[index + 1]
    const usage = next ? { today: next.date, runHours: next.runHours, hoursPerDay: now.hoursPerDay } : now
    const due = nextGreasing(plan, last, usage, settings)
    const passed = Math.max(1, Math.floor((due.elapsedPercent ?? 0) / 100))
    if (due.state === 'overdue' || due.state === 'missed') {
      tally.windowsDue += passed
      if (next) tally.late += 1
    } else if (next && due.state === 'not-due') tally.early += 1
    else if (next) {
      const right = doseCounts(next)
      tally.onTime += 1
      tally.windowsDue += 1
      if (right) tally.windowsMet += 1
      else tally.wrongAmount += 1
    }
  }
  const percent = tally.windowsDue === 0 ? null : (tally.windowsMet * 100) / tally.windowsDue
  return { ...tally, percent, source: formula('due windows met over windows due'), rule: 'R-COMPL', cautions: [] }
}

/** A dose that nobody weighed is given the benefit of the doubt. */
function doseCounts({ givenG, plannedG }: GreasingDone): boolean {
  return givenG === null || plannedG === null || checkDose(givenG, plannedG).counts
}

function requireOrder(greasings: readonly GreasingDone[]): void {
  for (const [index, { date }] of greasings.entries()) {
    const before = greasings[index - 1]
    if (before && daysBetween(before.date, date) < 0) {
      throw new InputError(
        'conflict',
        `greasings[${index}].date`,
        'Greasings have to be given in the order of their dates.',
      )
    }
  }
}
