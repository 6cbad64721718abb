import { InputError } from './input-error.ts'

/** A calendar day of the plant, such as 2026-11-24 (ISO 8601). No time of day, no time zone. */
export type PlainDate = string

const msPerDay = 86_400_000

/** Number of the day counted from 1970-01-01. Throws InputError where the text is not a day of the calendar. */
export function dayNumber(date: PlainDate, field = 'date'): number {
  const ms = /^\d{4}-\d{2}-\d{2}$/.test(date) ? Date.parse(`${date}T00:00:00Z`) : Number.NaN
  const valid = Number.isFinite(ms) && new Date(ms).toISOString().startsWith(date)
  if (!valid)
    throw new InputError('malformed', field, `"${date}" is not a day of the calendar: write it like 2026-11-24.`)
  return ms / msPerDay
}

/** The day with a number from dayNumber. */
export function dateOfDay(day: number): PlainDate {
  const date = new Date(Math.round(day) * msPerDay)
  if (Number.isNaN(date.getTime()) || date.getUTCFullYear() > 9999 || date.getUTCFullYear() < 0) {
    throw new InputError('too-large', 'date', 'The date is too far away to be written.')
  }
  return date.toISOString().slice(0, 10)
}

/** A date some days later (or earlier, when negative). */
export function addDays(date: PlainDate, days: number): PlainDate {
  return dateOfDay(dayNumber(date) + days)
}

/** The same day some calendar months later; a day that the month lacks becomes its last one (31 Aug + 6 = 28 Feb). */
export function addMonths(date: PlainDate, months: number): PlainDate {
  const start = new Date(dayNumber(date) * msPerDay)
  const [year, month] = [start.getUTCFullYear(), start.getUTCMonth() + months]
  const lastDay = new Date(Date.UTC(year, month + 1, 0)).getUTCDate()
  return dateOfDay(Date.UTC(year, month, Math.min(start.getUTCDate(), lastDay)) / msPerDay)
}

/** Days from one date to another; negative when the second is earlier. */
export function daysBetween(from: PlainDate, to: PlainDate): number {
  return dayNumber(to) - dayNumber(from)
}
