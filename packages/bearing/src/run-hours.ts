import { InputError } from './input-error.ts'

/** A bearing's stay at a position, so far or to its end. */
export interface Stay {
  readonly fittedAt: Date
  /** When it left, or the moment up to which it is asked. */
  readonly until: Date
  /** What the machine's meter had counted (h) when it was fitted and at its end; null where it was not read. */
  readonly startRunHours: number | null
  readonly endRunHours: number | null
  /** What the register says that the machine runs, h a day (0 to 24). */
  readonly hoursPerDay: number
}

export interface StayHours {
  readonly runHours: number
  /** An estimate is marked as such wherever it is shown, and can be left out of an analysis. */
  readonly hoursSource: 'meter' | 'estimate'
}

/**
 * Running hours (h) of a bearing's stay: the difference of the meter, or else days times the machine's usual hours a day,
 * rounded to whole hours and marked as an estimate. Throws InputError when the stay ends before it begins. R-HOURS.
 */
export function stayHours({ fittedAt, until, startRunHours, endRunHours, hoursPerDay }: Stay): StayHours {
  if (until < fittedAt) throw new InputError('conflict', 'until', 'A stay cannot end before the bearing was fitted.')
  if (startRunHours !== null && endRunHours !== null && endRunHours >= startRunHours) {
    // meters count to parts of an hour: binary dust of the difference is not hours
    return { runHours: Math.round((endRunHours - startRunHours) * 1e6) / 1e6, hoursSource: 'meter' }
  }
  const days = (until.getTime() - fittedAt.getTime()) / 86_400_000
  return { runHours: Math.round(days * hoursPerDay), hoursSource: 'estimate' }
}
