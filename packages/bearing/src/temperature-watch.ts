import { InputError, requireWithin } from './input-error.ts'
import { formula, type Sourced } from './source.ts'

export interface WatchedTemperature {
  /** Hours since the greasing. */
  hours: number
  celsius: number
}

export interface TemperatureWatch extends Sourced {
  verdict: 'settled' | 'watch' | 'remove-excess'
  highestRiseK: number
  /** Longest time in hours that every reading stood above the limit. */
  warmHours: number
}

/** A rise above this for longer than that means too much grease. */
export const watchLimits = Object.freeze({ riseK: 15, hours: 24 })

/**
 * Watch of a bearing's temperature after much grease was given: readings in the order of their hours (0 to 1000), against
 * the temperature before. More than 15 K for more than 24 h means that the excess has to come out. R-OVER.
 */
export function temperatureWatch(beforeC: number, readings: readonly WatchedTemperature[]): TemperatureWatch {
  requireWithin(beforeC, 'beforeC', -40, 200, '°C')
  if (readings.length === 0) throw new InputError('too-small', 'celsius', 'There is no reading after the greasing.')
  for (const [index, { hours, celsius }] of readings.entries()) {
    requireWithin(hours, `hours[${index}]`, 0, 1000, 'h')
    requireWithin(celsius, `celsius[${index}]`, -40, 250, '°C')
    if (hours <= (readings[index - 1]?.hours ?? -1))
      throw new InputError('conflict', `hours[${index}]`, 'The readings have to stand in the order of their hours.')
  }
  const warmHours = longestWarm(
    readings.map(({ hours, celsius }) => ({ hours, warm: celsius - beforeC > watchLimits.riseK })),
  )
  const last = readings.at(-1)
  const stillWarm = last !== undefined && last.celsius - beforeC > watchLimits.riseK
  const verdict = warmHours > watchLimits.hours ? 'remove-excess' : stillWarm ? 'watch' : 'settled'
  const cautions = {
    settled: [],
    watch: ['It still runs more than 15 K warmer than before: read it again, and keep the outlet open.'],
    'remove-excess': ['More than 15 K warmer for more than 24 h: take the excess grease out, the outlet open.'],
  }
  return {
    verdict,
    highestRiseK: Math.max(...readings.map(({ celsius }) => celsius - beforeC)),
    warmHours,
    source: formula('rise above the temperature before greasing'),
    rule: 'R-OVER',
    cautions: cautions[verdict],
  }
}

function longestWarm(readings: readonly { hours: number; warm: boolean }[]): number {
  let [longest, since] = [0, null as number | null]
  for (const { hours, warm } of readings) {
    since = warm ? (since ?? hours) : null
    if (since !== null) longest = Math.max(longest, hours - since)
  }
  return longest
}
