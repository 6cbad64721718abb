import { requireWithin } from './input-error.ts'
import { steelExpansionPerK } from './operating-clearance.ts'
import { formula, noAnswer, type NoAnswer, type Sourced } from './source.ts'
import { ringGrowth, usualSmoothingUm, type RingGeometry } from './thick-ring.ts'
import { toUm } from './units.ts'

export interface FitReduction extends Sourced {
  /** Interference less smoothing. */
  effectiveUm: number
  reductionUm: number
  /** Part of the effective interference that the raceway grows by; 0.75 to 0.85 is usual for roller bearings. */
  share: number
}

export interface FitInput extends RingGeometry {
  /** Shaft less bore as measured, in µm (0 to 1000). */
  interferenceUm: number
  /** Loss by flattened roughness in µm; 8 where nothing better is known. */
  smoothingUm?: number | null
}

/**
 * Reduction of clearance of a bearing with cylindrical bore on an interference fit, in µm: k · (I − smoothing) with k of the
 * thick-ring formulas. Nothing is driven up there; the outer ring is taken as free in its housing. R-RED.
 */
export function reductionByFit(input: FitInput): FitReduction {
  requireWithin(input.interferenceUm, 'interferenceUm', 0, 1000, 'µm')
  const smoothing = input.smoothingUm ?? usualSmoothingUm
  requireWithin(smoothing, 'smoothingUm', 0, 200, 'µm')
  const { k, hollow, estimated } = ringGrowth(input)
  const effectiveUm = Math.max(0, toUm(input.interferenceUm - smoothing, 'um'))
  const loose = effectiveUm > 0 ? [] : ['Nothing is left of the interference after smoothing: the ring may creep.']
  const raceway = estimated ? ['The inner raceway is estimated as (3 d + D) / 4: the maker has the real one.'] : []
  return {
    effectiveUm,
    reductionUm: toUm(effectiveUm * k * hollow, 'um'),
    share: k * hollow,
    source: formula('k · (interference − smoothing), thick ring (Lamé)'),
    rule: 'R-RED',
    cautions: [...loose, ...raceway, 'A tight housing takes more clearance, and it is not in this number.'],
  }
}

export interface HotFit extends Sourced {
  heatingK: number
  ringC: number
  limitC: number
  verdict: 'within-limit' | 'too-hot'
}

export interface HotFitInput {
  interferenceUm: number
  boreMm: number
  /** Temperature of the shaft in °C, 20 where it is not given. */
  ambientC?: number | null
  sealed?: boolean | null
}

/** Limit of a ring's temperature in °C; sealed bearings end between 80 and 100 °C, the lower is taken. */
export const hotFitLimitC = Object.freeze({ open: 120, sealed: 80 })

/**
 * Heating for a hot fit on a cylindrical seat: ΔT = (I + 0.05 mm) / (α · d) above the shaft, interference I in µm (0 to 1000),
 * bore in mm (3 to 2000), against the limit of the ring. Source: workshop practice, α = 12·10⁻⁶/K.
 */
export function hotFit(input: HotFitInput): HotFit {
  requireWithin(input.interferenceUm, 'interferenceUm', 0, 1000, 'µm')
  requireWithin(input.boreMm, 'boreMm', 3, 2000, 'mm')
  const ambient = input.ambientC ?? 20
  requireWithin(ambient, 'ambientC', -40, 60, '°C')
  const heatingK = (input.interferenceUm / 1000 + 0.05) / (steelExpansionPerK * input.boreMm)
  const limitC = input.sealed ? hotFitLimitC.sealed : hotFitLimitC.open
  const ringC = ambient + heatingK
  const tooHot = ringC > limitC
  const over = `The ring would need ${Math.round(ringC)} °C, more than ${limitC} °C: a lighter fit, or ask the engineer.`
  return {
    heatingK,
    ringC,
    limitC,
    verdict: tooHot ? 'too-hot' : 'within-limit',
    source: formula('(interference + 0.05 mm) / (α · d)'),
    rule: 'hot fit',
    cautions: [
      ...(tooHot ? [over] : []),
      'Heat by induction with demagnetising or in oil, never by a flame; no heater in a dust zone without the permit.',
      'Wear gloves. Hold the ring against its shoulder while it shrinks, then check with a 0.03 mm feeler.',
    ],
  }
}

export interface UsualSeat extends Sourced {
  found: true
  shaftClass: string
  housingClass: string
}

const seats = [
  { inclMm: 40, shaftClass: 'k5' },
  { inclMm: 65, shaftClass: 'm5' },
  { inclMm: 100, shaftClass: 'm6' },
  { inclMm: 140, shaftClass: 'n6' },
  { inclMm: 280, shaftClass: 'p6' },
]

/** Usual tolerance classes of a cylindrical seat for roller bearings by bore in mm (10 to 280), ISO 286 classes by trade practice. */
export function usualSeat(
  boreMm: number,
  place: { shaftRunsHot?: boolean | null; outerRingTurns?: boolean | null } = {},
): UsualSeat | NoAnswer {
  requireWithin(boreMm, 'boreMm', 10, 2000, 'mm')
  const seat = seats.find(({ inclMm }) => boreMm <= inclMm)
  const title = 'usual seats by trade practice, classes of ISO 286'
  if (!seat)
    return noAnswer(`There is no usual seat for ${boreMm} mm: the bearing maker gives it.`, title, 'usual seat')
  return {
    found: true,
    shaftClass: seat.shaftClass,
    housingClass: place.outerRingTurns ? 'N7 or P7' : place.shaftRunsHot ? 'G7' : 'H7',
    source: { ...formula(title), certainty: 'medium' },
    rule: 'usual seat',
    cautions: ['A rule of trade: load, speed and the maker’s sheet decide.'],
  }
}
