import type { GreasingRow } from '../builders/position-rows.ts'
import type { Random } from '../random.ts'
import { registerDays, type Calendar } from './calendar.ts'
import type { Place } from './plant.ts'
import type { Running } from './running.ts'
import { truth } from './truth.ts'

/** The greasing that the next one counts from; one from before the register, or of a bearing that left, is not recorded. */
export interface LastGreased {
  day: number
  recorded: GreasingRow | null
}

const daysPerMonth = 30.4
/** In this last stretch the rounds are kept everywhere but where they were left out. */
const keptDays = 40

/** Part of the interval that has gone by at a day, by run hours or by the calendar, the greater. */
export function partGone(place: Place, running: Running, from: number, to: number): number {
  const byHours = running.knownBetween(from, to) / place.plan.intervalHours
  const byCalendar = (to - from) / (place.plan.calendarMonths * daysPerMonth)
  return Math.max(byHours, byCalendar)
}

/** At which part of the interval the next greasing is done: mostly in its window, sometimes early, late or missed. */
export function nextPart(random: Random, care: number): number {
  if (random.chance(care)) return random.uniform(0.92, 1.04)
  return random.weighted([
    [random.uniform(0.6, 0.85), 20],
    [random.uniform(1.14, 1.42), 55],
    [random.uniform(1.55, 2.3), 25],
  ])
}

/** A round passes an area once or twice a week. */
export function isRoundDay({ area }: Place, calendar: Calendar, day: number): boolean {
  const weekday = calendar.weekday(day)
  return weekday < 5 && (weekday + area.walkingOrder / 10) % 3 === 0
}

/** Whether the round that passes on a day greases the position. */
export function isGreased(
  place: Place,
  running: Running,
  { last, part, day, calendar }: { last: LastGreased; part: number; day: number; calendar: Calendar },
): boolean {
  const { standing } = place
  if (standing?.kind === 'never-greased') return false
  let nextRound = day + 1
  while (!isRoundDay(place, calendar, nextRound)) nextRound++
  if (standing?.kind === 'left-behind') {
    const toEnd = partGone(place, running, day, registerDays)
    if (toEnd < standing.part) return false
    if (partGone(place, running, nextRound, registerDays) < standing.part) return true
    if (toEnd < standing.part + 0.75) return false
  }
  const inTime = day > registerDays - keptDays && partGone(place, running, last.day, nextRound) >= 1.06
  return inTime || partGone(place, running, last.day, day) >= part
}

/** Grams that were pressed in: the plan's dose as a rule, sometimes far less or more. */
export function doseGiven(random: Random, plannedG: number): number {
  const part = random.weighted([
    [random.uniform(0.9, 1.12), 94],
    [random.uniform(0.3, 0.65), 4],
    [random.uniform(1.6, 2.3), 2],
  ])
  return Math.max(1, Math.round(plannedG * part))
}

/** How much faster life is used up, by how late the grease is and by the last dose. */
export function greaseRate(partGoneBy: number, doseRatio: number): number {
  const { kept, beyond110Percent, beyond150Percent, tooLittle, tooMuch } = truth.greaseRate
  const late = partGoneBy > 1.5 ? beyond150Percent : partGoneBy > 1.1 ? beyond110Percent : kept
  const dose = doseRatio < 0.7 ? tooLittle : doseRatio > 1.5 ? tooMuch : kept
  return late * dose
}
