import { InputError } from './input-error.ts'
import { addMonths, dayNumber, daysBetween, type PlainDate } from './plain-date.ts'

/** When a position is to be greased: running hours, calendar months, days, or whichever comes first. */
export interface GreasingPlan {
  intervalHours: number | null
  calendarMonths: number | null
  /** 1 to 1000 days; for tasks that come round in days, such as turning a shaft that stands by. */
  calendarDays?: number | null
}

export interface LastGreasing {
  date: PlainDate
  /** Hour meter (or estimated run hours) at that greasing, null when it was not read. */
  runHours: number | null
}

/** What is known of the machine today. */
export interface Usage {
  today: PlainDate
  /** Run hours now, on the same meter as the last greasing; null when nobody read it. */
  runHours: number | null
  /** Average running hours a day, usually of the last 90 days; null when unknown. */
  hoursPerDay: number | null
}

export type DueReason = 'run-hours' | 'calendar'

/** The meter went back: said wherever two readings are compared. */
export const meterBackwards = 'The meter shows less than before: record the exchange of the meter first.'

/** A date further away than this is no date for a plan: the hours hardly run. */
const centuryDays = 36_500

/** One of the two limits: how far it has run, and on which day a part of it (in per cent) is reached. */
export interface Limit {
  reason: DueReason
  elapsed: number
  length: number
  dayOf: (percent: number, past: boolean) => number | null
  estimated: boolean
  dueRunHours: number | null
}

/** The calendar limit; it runs while a machine stands. */
export function byCalendar(months: number | null, last: LastGreasing, usage: Usage): Limit | null {
  if (months === null) return null
  const start = dayNumber(last.date)
  const length = daysBetween(last.date, addMonths(last.date, months))
  return {
    reason: 'calendar',
    elapsed: daysBetween(last.date, usage.today),
    length,
    dayOf: (percent, past) => start + firstWhole((length * percent) / 100, past),
    estimated: false,
    dueRunHours: null,
  }
}

/** The limit in days; it runs while a machine stands. */
export function byDays(days: number | null | undefined, last: LastGreasing, usage: Usage): Limit | null {
  if (days == null) return null
  const start = dayNumber(last.date)
  return {
    reason: 'calendar',
    elapsed: daysBetween(last.date, usage.today),
    length: days,
    dayOf: (percent, past) => start + firstWhole((days * percent) / 100, past),
    estimated: false,
    dueRunHours: null,
  }
}

/** The limit in run hours: by the meter, else by average hours a day, else there is none. */
export function byHours(plan: GreasingPlan, last: LastGreasing, usage: Usage): Limit | null {
  const length = plan.intervalHours
  if (length === null) return null
  const perDay = usage.hoursPerDay
  const read = last.runHours !== null && usage.runHours !== null ? usage.runHours - last.runHours : null
  if (read !== null && read < 0) throw new InputError('negative', 'usage.runHours', meterBackwards)
  const elapsed = read ?? (perDay === null ? null : perDay * daysBetween(last.date, usage.today))
  if (elapsed === null) return null
  const today = dayNumber(usage.today)
  return {
    reason: 'run-hours',
    elapsed,
    length,
    dayOf: (percent, past) => {
      const missing = (length * percent) / 100 - elapsed
      if (perDay === null || perDay === 0) return missing < 0 || (missing === 0 && !past) ? today : null
      const days = missing / perDay
      return days > centuryDays ? null : Math.max(dayNumber(last.date), today + firstWhole(days, past))
    },
    estimated: true,
    dueRunHours: last.runHours === null ? null : last.runHours + length,
  }
}

/** The first whole day at which a moment is reached, or is past. Guards against binary dust of the division. */
function firstWhole(days: number, past: boolean): number {
  const near = Math.round(days)
  const exact = Math.abs(days - near) < 1e-9 ? near : days
  return past ? Math.floor(exact) + 1 : Math.ceil(exact)
}

/** Used part of a limit. Multiplied first, so that whole hours and days give exact per cents where there are any. */
export function percentOf({ elapsed, length }: Limit): number {
  return (elapsed * 100) / length
}
