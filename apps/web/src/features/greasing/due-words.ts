import type { DueItem } from '@shaftbook/contract/greasing'
import { formatCount } from '../../lib/format-count.ts'
import { daysBetween } from '../../lib/format-day.ts'

/** How late or how far off: by run hours where they decide and the meter was read, else by days. */
export function dueDistance(item: DueItem, today: string): string {
  if (item.state === 'never-greased') return 'no greasing is recorded'
  const hours = hoursLate(item)
  if (hours !== null && hours > 0) return `${formatCount(hours)} run hours late`
  const days = daysBetween(item.dueOn, today)
  if (days === 0) return 'due today'
  if (days < 0) return `in ${count(-days, 'day')}`
  return item.state === 'due' ? `due for ${count(days, 'day')}` : `${count(days, 'day')} late`
}

/** What sets the date. */
export function dueReason({ dueBy, dueRunHours, estimated }: DueItem): string {
  if (dueBy === 'never-greased') return 'since the bearing was fitted'
  if (dueBy === 'calendar') return 'by the calendar'
  const at = dueRunHours === null ? 'by run hours' : `at ${formatCount(dueRunHours)} run hours`
  return estimated ? `${at}, estimated` : at
}

function hoursLate({ dueBy, dueRunHours, meterLastTotalHours }: DueItem): number | null {
  if (dueBy !== 'hours' || dueRunHours === null || meterLastTotalHours === null) return null
  return Math.round(meterLastTotalHours - dueRunHours)
}

function count(days: number, noun: string): string {
  return `${formatCount(days)} ${noun}${days === 1 ? '' : 's'}`
}
