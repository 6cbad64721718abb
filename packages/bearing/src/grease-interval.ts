import { requireWithin } from './input-error.ts'
import { formula, type Sourced } from './source.ts'

/** Levels of each factor of the interval, worst last. Take the worse one when unsure. R-INT. */
export const intervalLevels = {
  temperature: {
    'below-65': { factor: 1, label: 'outer ring below 65 °C' },
    '65-to-80': { factor: 0.5, label: 'outer ring 65 to 80 °C' },
    '80-to-93': { factor: 0.2, label: 'outer ring 80 to 93 °C' },
    'above-93': { factor: 0.1, label: 'outer ring above 93 °C' },
  },
  dirt: {
    'light-soft': { factor: 1, label: 'light, not abrasive' },
    'heavy-soft': { factor: 0.7, label: 'heavy, not abrasive' },
    'light-abrasive': { factor: 0.4, label: 'light, abrasive' },
    'heavy-abrasive': { factor: 0.2, label: 'heavy, abrasive' },
  },
  moisture: {
    'below-80': { factor: 1, label: 'humidity below 80 %' },
    '80-to-90': { factor: 0.7, label: 'humidity 80 to 90 %' },
    condensation: { factor: 0.4, label: 'occasional condensation' },
    'water-on-housing': { factor: 0.1, label: 'occasional water on the housing' },
  },
  vibration: {
    'below-5': { factor: 1, label: 'below 5 mm/s peak' },
    '5-to-10': { factor: 0.6, label: '5 to 10 mm/s peak' },
    'above-10': { factor: 0.3, label: 'above 10 mm/s peak' },
  },
  shaft: {
    horizontal: { factor: 1, label: 'horizontal' },
    inclined: { factor: 0.5, label: 'inclined, about 45°' },
    vertical: { factor: 0.3, label: 'vertical' },
  },
  bearing: {
    'radial-ball': { factor: 10, label: 'radial ball' },
    'cylindrical-roller': { factor: 5, label: 'cylindrical or needle roller' },
    'spherical-roller': { factor: 1, label: 'spherical, tapered or thrust roller' },
  },
} as const

export type IntervalLevels = { [Name in keyof typeof intervalLevels]: keyof (typeof intervalLevels)[Name] }

/** factors: a factor for each temperature step. halving: halved for each 15 K above 70 °C. Never both. */
export type IntervalMethod = { kind: 'factors' } | { kind: 'halving'; outerRingC: number }

export interface IntervalInput {
  speedRpm: number
  boreMm: number
  levels: IntervalLevels
  /** Equivalent load over dynamic rating, P/C; null when unknown. */
  loadOverRating?: number | null
  outerRingTurns?: boolean
  method?: IntervalMethod
  /** The engineer lets the interval exceed 8760 run hours. */
  capLifted?: boolean
}

export interface IntervalFactor {
  name: string
  label: string
  factor: number
}

export type GreaseInterval = Sourced & {
  method: IntervalMethod['kind']
  factors: IntervalFactor[]
  product: number
} & (
    | { kind: 'interval'; intervalHours: number; baseHours: number; capped: boolean }
    | { kind: 'outside-formula'; sentence: string }
  )

/** Run hours in a year: the interval's cap. */
export const intervalCapHours = 8760

/**
 * Greasing interval in running hours: K · (14 000 000 / (n · √d) − 4 · d), n in rev/min (1 to 20 000), d in mm (10 to 1500),
 * with every factor of K in the result. An upper limit, capped at 8760 h. Where the bracket is not positive the formula
 * doesn't apply. R-INT, R-LOAD.
 */
export function greaseInterval(input: IntervalInput): GreaseInterval {
  requireWithin(input.speedRpm, 'speedRpm', 1, 20_000, 'rev/min')
  requireWithin(input.boreMm, 'boreMm', 10, 1500, 'mm')
  const method = input.method ?? { kind: 'factors' }
  const factors = [...levelFactors(input.levels, method), ...loadFactors(input)]
  const product = factors.reduce((total, { factor }) => total * factor, 1)
  const sourced = { source: formula('K · (14 000 000 / (n · √d) − 4 · d) run hours'), rule: 'R-INT, R-LOAD' }
  const common = { ...sourced, method: method.kind, factors, product, cautions: loadCautions(input) }
  const baseHours = 14_000_000 / (input.speedRpm * Math.sqrt(input.boreMm)) - 4 * input.boreMm
  if (baseHours <= 0) {
    const sentence =
      'Speed and bore are outside the interval formula: the engineer or the bearing maker sets the interval.'
    return { ...common, kind: 'outside-formula', sentence }
  }
  const hours = product * baseHours
  const capped = hours > intervalCapHours && input.capLifted !== true
  return { ...common, kind: 'interval', intervalHours: capped ? intervalCapHours : hours, baseHours, capped }
}

function levelFactors(levels: IntervalLevels, method: IntervalMethod): IntervalFactor[] {
  const { temperature, shaft, ...others } = {
    temperature: intervalLevels.temperature[levels.temperature],
    dirt: intervalLevels.dirt[levels.dirt],
    moisture: intervalLevels.moisture[levels.moisture],
    vibration: intervalLevels.vibration[levels.vibration],
    shaft: intervalLevels.shaft[levels.shaft],
    bearing: intervalLevels.bearing[levels.bearing],
  }
  const rest = Object.entries(others).map(([name, level]) => ({ name, ...level }))
  if (method.kind === 'factors') return [{ name: 'temperature', ...temperature }, ...rest, { name: 'shaft', ...shaft }]
  requireWithin(method.outerRingC, 'outerRingC', -40, 150, '°C')
  const halvings = Math.max(0, (method.outerRingC - 70) / 15)
  const halved = { name: 'temperature', label: `halved for each 15 K above 70 °C`, factor: 2 ** -halvings }
  const upright = { name: 'shaft', label: shaft.label, factor: levels.shaft === 'horizontal' ? 1 : 0.5 }
  return [halved, ...rest, upright]
}

function loadFactors({ loadOverRating, outerRingTurns }: IntervalInput): IntervalFactor[] {
  const factors: IntervalFactor[] = []
  if (loadOverRating !== undefined && loadOverRating !== null) {
    requireWithin(loadOverRating, 'loadOverRating', 0, 1, '')
    factors.push({ name: 'load', ...loadFactor(loadOverRating) })
  }
  if (outerRingTurns) factors.push({ name: 'outer ring', label: 'outer ring turns, or the load swings', factor: 0.5 })
  return factors
}

function loadFactor(loadOverRating: number): { factor: number; label: string } {
  if (loadOverRating <= 0.1) return { factor: 1, label: 'P up to 0.10 C' }
  if (loadOverRating <= 0.15) return { factor: 0.7, label: 'P to 0.15 C' }
  if (loadOverRating <= 0.2) return { factor: 0.5, label: 'P to 0.20 C' }
  return { factor: 0.3, label: 'P above 0.20 C' }
}

function loadCautions({ loadOverRating, outerRingTurns }: IntervalInput): string[] {
  const known = loadOverRating !== undefined && loadOverRating !== null
  const heavy = known && loadOverRating > 0.2 ? ['The load is above 0.20 C: ask the engineer.'] : []
  const unknown = known ? [] : ['The load is not known, so the interval is not shortened for it.']
  const turning = outerRingTurns ? ['For the speed class use n · D, since the outer ring turns.'] : []
  return [
    'An upper limit: grease earlier where the used grease looks dark, hard or wet.',
    ...heavy,
    ...unknown,
    ...turning,
  ]
}
