import { aMeterReading } from '../builders/site-rows.ts'
import type { Random } from '../random.ts'
import type { Book } from './book.ts'
import { registerDays, type Calendar } from './calendar.ts'
import type { PlantMachine } from './plant.ts'

/** How a machine ran: its hours in all at the start of each day, on its meter where it has one. */
export interface Running {
  totalAt(day: number): number
  /** The whole hours that a person writes down, or null without a meter. */
  readAt(day: number): number | null
  /** Average of the 90 days before. */
  hoursPerDay(day: number): number
  /** Hours between two days as people know them: by the meter, or by the usual hours a day. */
  knownBetween(from: number, to: number): number
}

export function runMachine(machine: PlantMachine, calendar: Calendar, random: Random): Running {
  const { firstDay, older, row, meter } = machine
  const totals = [older ? random.integer(22_000, 44_000) : 0]
  for (let day = firstDay; day < registerDays; day++) {
    const busy = calendar.isStop(day) ? 0 : calendar.season(day) * random.uniform(0.6, 1.4)
    totals.push((totals.at(-1) ?? 0) + Math.min(22, row.hoursPerDay * busy))
  }
  const totalAt = (day: number): number => totals[Math.max(0, day - firstDay)] ?? 0
  const hoursPerDay = (day: number): number => {
    const from = Math.max(firstDay, day - 90)
    return meter && day - from >= 7 ? (totalAt(day) - totalAt(from)) / (day - from) : row.hoursPerDay
  }
  return {
    totalAt,
    readAt: (day) => (meter ? Math.round(totalAt(day)) : null),
    hoursPerDay,
    knownBetween: (from, to) =>
      meter ? totalAt(to) - totalAt(Math.max(from, firstDay)) : row.hoursPerDay * (to - from),
  }
}

/** Reads the meter on one morning of the week; an exchanged one starts where the new one does. */
export function readMeter(
  machine: PlantMachine,
  running: Running,
  tools: { calendar: Calendar; random: Random; book: Book; readBy: string },
): void {
  const { meter, firstDay } = machine
  if (!meter) return
  const { calendar, random, book, readBy } = tools
  const { exchange } = machine.spec
  const exchangeDay = exchange ? registerDays - exchange.daysAgo : Number.POSITIVE_INFINITY
  let aheadHours = 0
  const write = (day: number, newMeterShowsHours: number | null): void => {
    const totalHours = Math.round(running.totalAt(day))
    const readAt = calendar.at(day, 6 * 60 + random.integer(0, 50))
    const kind = newMeterShowsHours === null ? 'reading' : 'exchange'
    const shown = { shownHours: totalHours - aheadHours, newMeterShowsHours, totalHours }
    const id = random.uuidAt(readAt)
    book.meterReadings.push(
      aMeterReading({ siteId: meter.siteId, id, meterId: meter.id, kind, readAt, ...shown, readBy }),
    )
    if (newMeterShowsHours !== null) aheadHours = totalHours - newMeterShowsHours
    meter.lastReadAt = readAt
    meter.lastTotalHours = totalHours
  }
  for (let day = firstDay; day < registerDays; day++) {
    if (day === exchangeDay && exchange) write(day, exchange.newMeterShowsHours)
    else if (day === firstDay || calendar.weekday(day) === 0) write(day, null)
  }
}
