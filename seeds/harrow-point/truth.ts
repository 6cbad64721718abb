/**
 * What is true of lives at Harrow Point: the numbers that the simulation draws by, and that an analysis of its records
 * can be measured against.
 *
 * A bearing is fitted with a life W drawn from Weibull's distribution with scale 1 and the shape of its mount. Each run
 * hour uses up `mountRate · greaseRate / scaleHours` of it, and the bearing fails when W is used up. So with a good mount
 * and greasing kept, lives in run hours are Weibull with the shape `shape.good` and the scale `scaleHours`:
 *
 *   scaleHours = referenceHours · (L10h / referenceL10Hours)^ratingExponent · areaFactor
 *   L10h = (C/P)^(10/3) · 10⁶ / (60 · n), ISO 281, n in rev/min
 *
 * Bearings that were in before the register began are drawn given that they had survived until then.
 */
export const truth = {
  referenceHours: 13_000,
  referenceL10Hours: 100_000,
  ratingExponent: 0.3,
  /** How hard an area is on its bearings, besides load and speed: dust, wet, heat, shaking. */
  areaFactor: { RP: 0.75, ET: 0.95, CL: 1, GA: 1.05, DR: 0.85, AS: 0.8, SL: 0.8, BG: 1.1 },
  /** How much faster life is used up after a mount of each kind; `unrecorded` is a bearing from before the register. */
  mountRate: { good: 1, under: 1.9, over: 2.8, thin: 2.3, unjudged: 1.1, unrecorded: 1.15 },
  /** Below 2 a mix of early failures, above it wear-out. */
  shape: { good: 2, under: 1.4, over: 1.1, thin: 1.3, unjudged: 1.7, unrecorded: 1.7 },
  /** How much faster life is used up while grease is due beyond a part of its interval, or after a wrong dose. */
  greaseRate: { kept: 1, beyond110Percent: 2.5, beyond150Percent: 5, tooLittle: 1.5, tooMuch: 1.25 },
} as const

export type AreaCode = keyof typeof truth.areaFactor

/** How a mount ended up: inside with enough clearance, outside the band, inside with too little left, not judged. */
export type MountOutcome = 'good' | 'under' | 'over' | 'thin' | 'unjudged'

/** Scale of life in run hours of a bearing with P = `loadOverRating` · C at a speed in rev/min. */
export function scaleHours(area: AreaCode, loadOverRating: number, speedRpm: number): number {
  const l10Hours = ((1 / loadOverRating) ** (10 / 3) * 1e6) / (60 * speedRpm)
  const ratio = (l10Hours / truth.referenceL10Hours) ** truth.ratingExponent
  return truth.referenceHours * ratio * truth.areaFactor[area]
}
