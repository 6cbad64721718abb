import { InputError, requireWithin } from './input-error.ts'
import {
  byCalendar,
  byDays,
  byHours,
  meterBackwards,
  percentOf,
  type DueReason,
  type GreasingPlan,
  type LastGreasing,
  type Limit,
  type Usage,
} from './due-limits.ts'
import { dateOfDay, dayNumber, daysBetween, type PlainDate } from './plain-date.ts'
import { formula, type Sourced } from './source.ts'

/** What a site decides about greasing windows. */
export interface DueSettings {
  /** A greasing counts as on time within this part of the interval before and after. */
  windowPercent: number
  /** Later than this part of the interval counts as missed. */
  missedPercent: number
  /** Where the window after the due day is another than before it. */
  windowAfterPercent?: number
}

export const defaultDueSettings: Readonly<DueSettings> = Object.freeze({ windowPercent: 10, missedPercent: 50 })

export type { DueReason, GreasingPlan, LastGreasing, Usage } from './due-limits.ts'

export const dueStates = ['never-greased', 'not-due', 'due-soon', 'due', 'overdue', 'missed'] as const
export type DueState = (typeof dueStates)[number]

export interface NextDue extends Sourced {
  state: DueState
  /** Which limit comes first. */
  dueBy: DueReason | null
  dueDate: PlainDate | null
  /** Run hours at which it is due, null without an interval in hours or without hours at the last greasing. */
  dueRunHours: number | null
  /** First days of the states due-soon, overdue and missed. */
  dueSoonFrom: PlainDate | null
  overdueFrom: PlainDate | null
  missedFrom: PlainDate | null
  /** The date follows from average hours a day, not from the calendar or a meter alone. */
  estimated: boolean
  /** How much of the interval is used up, in per cent, by the limit that is nearer; null without a greasing. */
  elapsedPercent: number | null
  /** Run hours past due, null when not past due by hours. */
  lateHours: number | null
  /** Days past the due date, null when not past it. */
  lateDays: number | null
}

/** Calendar limit taken when a plan has none and nobody knows the run hours. */
const fallbackMonths = 12

/** Calendar limit in months where none is set: 12, or 6 in the wet or on a vertical shaft. */
export function defaultCalendarMonths(place: { wet: boolean; vertical: boolean }): number {
  return place.wet || place.vertical ? 6 : fallbackMonths
}

/**
 * Next greasing: the earlier of (last run hours + interval) and (last date + calendar months), with the state today.
 * Due-soon is the window before it, due the window after it, then overdue, then missed. The calendar runs while a machine
 * stands. A position that never was greased is never-greased: pass the first fill as a greasing. R-CAL, R-COMPL.
 */
export function nextGreasing(
  plan: GreasingPlan,
  last: LastGreasing | null,
  usage: Usage,
  settings: DueSettings = defaultDueSettings,
): NextDue {
  checkPlan(plan, settings)
  dayNumber(usage.today, 'today')
  if (!last) return neverGreased()
  if (daysBetween(last.date, usage.today) < 0) {
    throw new InputError('conflict', 'last.date', 'The last greasing lies in the future: check its date.')
  }
  const hours = byHours(plan, last, usage)
  const days = byDays(plan.calendarDays, last, usage)
  const months = plan.calendarMonths ?? (hours || days ? null : fallbackMonths)
  const limits = [byCalendar(months, last, usage), days, hours].filter((limit) => limit !== null)
  return combine(limits, usage, settings, hours ? [] : hoursCautions(plan))
}

/** Average running hours a day between two readings of one meter; 0 to 24. */
export function averageHoursPerDay(
  from: { date: PlainDate; runHours: number },
  to: { date: PlainDate; runHours: number },
): number {
  const days = daysBetween(from.date, to.date)
  const hours = to.runHours - from.runHours
  if (days <= 0) throw new InputError('conflict', 'to.date', 'The second reading has to be on a later day.')
  if (hours < 0) throw new InputError('negative', 'to.runHours', meterBackwards)
  requireWithin(hours / days, 'hours per day', 0, 24, 'h')
  return hours / days
}

function combine(limits: Limit[], usage: Usage, settings: DueSettings, cautions: string[]): NextDue {
  const earliest = (percent: number, past: boolean): { day: number; limit: Limit } | null => {
    const days = limits.flatMap((limit) => {
      const day = limit.dayOf(percent, past)
      return day === null ? [] : [{ day, limit }]
    })
    return days.sort((a, b) => a.day - b.day)[0] ?? null
  }
  const date = (percent: number, past: boolean): PlainDate | null => {
    const found = earliest(percent, past)
    return found ? dateOfDay(found.day) : null
  }
  const due = earliest(100, false)
  const states = limits.map((limit) => stateOf(limit, settings))
  const hours = limits.find((limit) => limit.reason === 'run-hours')
  const lateDays = due ? dayNumber(usage.today) - due.day : 0
  return {
    state: dueStates[Math.max(...states.map((state) => dueStates.indexOf(state)))] ?? 'not-due',
    dueBy: due?.limit.reason ?? null,
    dueDate: due ? dateOfDay(due.day) : null,
    dueRunHours: hours?.dueRunHours ?? null,
    dueSoonFrom: date(100 - settings.windowPercent, false),
    overdueFrom: date(100 + windowAfter(settings), true),
    missedFrom: date(100 + settings.missedPercent, true),
    estimated: due?.limit.estimated ?? false,
    elapsedPercent: Math.max(...limits.map(percentOf)),
    lateHours: hours && hours.elapsed > hours.length ? hours.elapsed - hours.length : null,
    lateDays: lateDays > 0 ? lateDays : null,
    source: formula('last greasing plus interval in run hours or calendar months, the earlier'),
    rule: 'R-CAL',
    cautions: due?.limit.estimated ? [...cautions, 'The date is estimated from average hours a day.'] : cautions,
  }
}

function windowAfter({ windowPercent, windowAfterPercent }: DueSettings): number {
  return windowAfterPercent ?? windowPercent
}

function stateOf(limit: Limit, settings: DueSettings): DueState {
  const percent = percentOf(limit)
  if (percent > 100 + settings.missedPercent) return 'missed'
  if (percent > 100 + windowAfter(settings)) return 'overdue'
  if (percent >= 100) return 'due'
  return percent >= 100 - settings.windowPercent ? 'due-soon' : 'not-due'
}

function neverGreased(): NextDue {
  return {
    state: 'never-greased',
    dueBy: null,
    dueDate: null,
    dueRunHours: null,
    dueSoonFrom: null,
    overdueFrom: null,
    missedFrom: null,
    estimated: false,
    elapsedPercent: null,
    lateHours: null,
    lateDays: null,
    source: formula('no greasing is recorded'),
    rule: 'R-CAL',
    cautions: [],
  }
}

function hoursCautions(plan: GreasingPlan): string[] {
  if (plan.intervalHours === null) return []
  const calendar =
    plan.calendarDays == null ? `${plan.calendarMonths ?? fallbackMonths} months` : `${plan.calendarDays} days`
  return [`Run hours are unknown, so only the calendar (${calendar}) is judged: read the hour meter.`]
}

function checkPlan(plan: GreasingPlan, settings: DueSettings): void {
  const { intervalHours, calendarMonths, calendarDays = null } = plan
  if (intervalHours === null && calendarMonths === null && calendarDays === null) {
    throw new InputError('conflict', 'plan', 'A plan needs an interval in run hours, in calendar months or in days.')
  }
  if (intervalHours !== null) requireWithin(intervalHours, 'intervalHours', 1, 200_000, 'h')
  if (calendarMonths !== null) {
    requireWithin(calendarMonths, 'calendarMonths', 1, 240, 'months')
    if (!Number.isInteger(calendarMonths)) {
      throw new InputError('not-a-number', 'calendarMonths', 'Calendar months have to be a whole number.')
    }
  }
  if (calendarDays !== null) {
    requireWithin(calendarDays, 'calendarDays', 1, 1000, 'days')
    if (!Number.isInteger(calendarDays)) {
      throw new InputError('not-a-number', 'calendarDays', 'Days have to be a whole number.')
    }
  }
  requireWithin(settings.windowPercent, 'windowPercent', 0, 90, '%')
  requireWithin(windowAfter(settings), 'windowAfterPercent', 0, 90, '%')
  requireWithin(settings.missedPercent, 'missedPercent', settings.windowPercent, 1000, '%')
}
