import { defaultDueSettings, nextGreasing, type DueSettings, type NextDue } from './due.ts'
import type { GreasingPlan, LastGreasing, Usage } from './due-limits.ts'
import { InputError } from './input-error.ts'

/** What is to be done at a position again and again. */
export const greaseTasks = ['regrease', 'refill', 'check-system', 'check-oil', 'change-oil', 'turn-shaft'] as const
export type GreaseTask = (typeof greaseTasks)[number]

/** When a task was done before; where it never was, since when the position has asked for it. */
export interface LastDone {
  readonly done: LastGreasing | null
  /** The later of the day that the bearing was fitted and the day that the plan was made. */
  readonly asked: LastGreasing
}

/**
 * When a task is due next, by its own rule; every limit runs on while the machine stands, but run hours.
 *
 * - `regrease`: last greasing plus run hours or months, the earlier; without one it is never-greased (R-CAL, R-COMPL).
 * - `refill` of an automatic lubricator: the day that it is empty, which is the day it was filled plus the months (1 to 60)
 *   that its setting empties it in, as its maker states. An empty one lubricates nothing, so it is overdue from the next
 *   day on: there is no window after it.
 * - `check-system`, `check-oil`: last check plus days (1 to 1000), months or run hours, the earliest.
 * - `change-oil`: last change plus run hours (1 to 200 000) or months, the earlier.
 * - `turn-shaft` of a machine that stands by: last turning plus days (1 to 1000); standing still lets rollers print into the
 *   races (ISO 15243:2017, false brinelling), whatever the hours say.
 *
 * Checks, changes and turning that were never done count from the day they were first asked for: what was fitted then was
 * filled and free. Throws InputError where a plan lacks what its task needs. R-CAL, R-COMPL.
 */
export function nextOfTask(
  task: GreaseTask,
  plan: GreasingPlan,
  last: LastDone,
  usage: Usage,
  settings: DueSettings = defaultDueSettings,
): NextDue {
  const { calendarMonths, calendarDays = null, intervalHours } = plan
  if (task === 'regrease') return nextGreasing({ intervalHours, calendarMonths }, last.done, usage, settings)
  if (task === 'refill') {
    if (calendarMonths === null) {
      throw new InputError('conflict', 'calendarMonths', 'Enter in how many months the lubricator is empty.')
    }
    const empty = { intervalHours: null, calendarMonths }
    return nextGreasing(empty, last.done, usage, { ...settings, windowAfterPercent: 0 })
  }
  const since = last.done ?? last.asked
  if (task !== 'turn-shaft') return nextGreasing(plan, since, usage, settings)
  if (calendarDays === null) throw new InputError('conflict', 'calendarDays', 'Enter every how many days it is turned.')
  return nextGreasing({ intervalHours: null, calendarMonths: null, calendarDays }, since, usage, settings)
}
