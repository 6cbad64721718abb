import { requireWithin } from './input-error.ts'
import { formula, type Sourced } from './source.ts'
import { watchLimits } from './temperature-watch.ts'

/** As a person reads it from the machine's table: A new, B long-term, C short-term only, D damaging. ISO 20816-1. */
export type VibrationZone = 'A' | 'B' | 'C' | 'D'

export interface Rise extends Sourced {
  /** 'unknown': there are too few earlier readings to compare with. */
  verdict: 'usual' | 'risen' | 'unknown'
  /** Median of the earlier readings; null where there are too few. */
  usual: number | null
  /** Newest over usual; null where there is no usual. */
  rise: number | null
}

/** Earlier readings that a position's own history is made of: at least so many, the newest so many. */
const leastHistory = 3
const mostHistory = 10

/**
 * A bearing's newest temperature (°C, -60 to 250) against the median of its own earlier readings, the newest ten, oldest
 * first: more than 15 K above it is a rise. Below three earlier readings nothing is said. Ambient swings are left to the
 * reader: the median follows the season, one hot reading does not move it. R-OVER.
 */
export function temperatureRise(earlierC: readonly number[], newestC: number): Rise {
  for (const [index, value] of [...earlierC, newestC].entries())
    requireWithin(value, `celsius[${index}]`, -60, 250, '°C')
  const cautions = ['Watch it: a rise above 15 K for more than 24 h after greasing means taking the excess out.']
  return riseOver(
    earlierC,
    newestC,
    watchLimits.riseK,
    'newest over the median of earlier temperatures',
    'R-OVER',
    cautions,
  )
}

/** A change of more than a quarter of the upper limit of zone B is significant, whatever the zone: ISO 20816-1, criterion II. */
const significantPart = 0.25
/** Upper limit of zone B in mm/s where the machine's own is not known: ISO 20816-3, group 2 on a rigid base. */
export const usualZoneBLimitMmS = 2.8

/**
 * A bearing's newest vibration velocity (mm/s r.m.s., 0 to 500) against the median of its own earlier readings, the newest
 * ten, oldest first: a rise of more than a quarter of the upper limit of zone B (mm/s, 0.5 to 50) is significant (ISO
 * 20816-1, criterion II). Readings by hand scatter, so that it has to exceed three times their median deviation too.
 */
export function vibrationRise(
  earlierMmS: readonly number[],
  newestMmS: number,
  zoneBLimitMmS: number = usualZoneBLimitMmS,
): Rise {
  for (const [index, value] of [...earlierMmS, newestMmS].entries())
    requireWithin(value, `velocity[${index}]`, 0, 500, 'mm/s')
  requireWithin(zoneBLimitMmS, 'zoneBLimit', 0.5, 50, 'mm/s')
  const history = earlierMmS.slice(-mostHistory)
  const usual = median(history)
  const scatter = 3 * median(history.map((value) => Math.abs(value - usual)))
  const limit = Math.max(significantPart * zoneBLimitMmS, history.length < leastHistory ? 0 : scatter)
  const cautions = [
    'Look for its cause: looseness, imbalance, a damaged race. The zone is that of the machine’s own table.',
  ]
  return riseOver(
    earlierMmS,
    newestMmS,
    limit,
    'newest over the median of earlier velocities, ISO 20816-1 criterion II',
    'ISO 20816-1, criterion II',
    cautions,
  )
}

/** Whether the zone got worse than it usually was, and is C or D now. ISO 20816-1, criterion I as the person reads it. */
export function zoneWorse(earlier: readonly VibrationZone[], newest: VibrationZone): boolean {
  const order = 'ABCD'
  const usual = median(earlier.slice(-mostHistory).map((zone) => order.indexOf(zone)))
  return order.indexOf(newest) >= 2 && (earlier.length === 0 || order.indexOf(newest) > usual)
}

function riseOver(
  earlier: readonly number[],
  newest: number,
  limit: number,
  title: string,
  rule: string,
  cautions: string[],
): Rise {
  const sourced = { source: formula(title), rule }
  const history = earlier.slice(-mostHistory)
  if (history.length < leastHistory) return { verdict: 'unknown', usual: null, rise: null, ...sourced, cautions: [] }
  const usual = median(history)
  const rise = newest - usual
  const risen = rise > limit
  return { verdict: risen ? 'risen' : 'usual', usual, rise, ...sourced, cautions: risen ? cautions : [] }
}

/** 0 where there is nothing. */
function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  const middle = sorted.length / 2
  const upper = sorted[Math.floor(middle)] ?? 0
  return Number.isInteger(middle) ? ((sorted[middle - 1] ?? 0) + upper) / 2 : upper
}
