import type { IntervalInput, IntervalLevels } from '@shaftbook/bearing/grease-interval'
import { intervalOf, wholeHours } from '@shaftbook/contract/plan-duty'
import { parseNumber } from '../../lib/length-units.ts'

/** A duty as it is typed. */
export interface DutyEntry {
  speedRpm: string
  levels: IntervalLevels
  /** Load over rating as typed; empty: not known. */
  loadOverRating: string
  outerRingTurns: boolean
  capLifted: boolean
  /** How temperature and attitude count, where it is not by their factors; no field changes it. */
  method?: IntervalInput['method'] | undefined
}

/** The fields of a duty that stands in a plan. */
export function dutyEntryOf(duty: IntervalInput): DutyEntry {
  return {
    speedRpm: String(duty.speedRpm),
    levels: duty.levels,
    loadOverRating: duty.loadOverRating == null ? '' : String(duty.loadOverRating),
    outerRingTurns: duty.outerRingTurns ?? false,
    capLifted: duty.capLifted ?? false,
    method: duty.method,
  }
}

/** The duty that the fields say; a speed that is none is refused by the formula. */
export function dutyTyped(entry: DutyEntry, boreMm: number): IntervalInput {
  return {
    speedRpm: parseNumber(entry.speedRpm) ?? Number.NaN,
    boreMm,
    levels: entry.levels,
    loadOverRating: parseNumber(entry.loadOverRating) ?? null,
    outerRingTurns: entry.outerRingTurns,
    capLifted: entry.capLifted,
    ...(entry.method && { method: entry.method }),
  }
}

/** The interval of a duty in whole run hours; null where the formula gives none. R-INT. */
export function hoursOf(duty: IntervalInput): number | null {
  const interval = intervalOf(duty)
  return interval.kind === 'interval' ? wholeHours(interval.intervalHours) : null
}

const daysPerMonth = 365.25 / 12

export interface FirstLimit {
  readonly by: 'hours' | 'calendar'
  /** Days from a greasing to the next, at the usual hours a day. */
  readonly days: number
}

/** Which limit of a plan comes first at so many run hours a day (0 to 24), and after how many days. R-CAL. */
export function firstLimit(
  plan: { readonly intervalHours: number; readonly calendarMonths: number },
  hoursPerDay: number,
): FirstLimit {
  const calendarDays = Math.floor(plan.calendarMonths * daysPerMonth)
  const hoursDays = hoursPerDay > 0 ? Math.floor(plan.intervalHours / hoursPerDay) : calendarDays
  return hoursDays < calendarDays ? { by: 'hours', days: hoursDays } : { by: 'calendar', days: calendarDays }
}

/** How a trial interval compares with the present one, in words. */
export function comparedWords(presentHours: number, trialHours: number): string {
  if (presentHours === trialHours) return 'as now'
  const ratio = trialHours / presentHours
  if (ratio > 10 || ratio < 0.1) return ratio > 1 ? 'more than ten times as long' : 'less than a tenth as long'
  return ratio > 1 ? `${rounded(ratio)} times as long` : `${Math.round(ratio * 100)} % of it`
}

function rounded(ratio: number): string {
  return String(Number(ratio.toPrecision(2)))
}
