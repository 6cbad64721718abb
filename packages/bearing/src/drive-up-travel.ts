import type { Taper } from '@shaftbook/standards/table'
import type { Band } from './band.ts'
import { checkRatio, nutAngleDeg, type RatioCheck } from './drive-up.ts'
import type { ReadStep } from './drive-up-steps.ts'

/** Travel over reduction, without a unit, and where the range comes from. */
export interface TravelRatio {
  min: number
  max: number
  from: 'band-source' | 'usual-range' | 'this-mount'
}

/** Axial travel in mm and, where the pitch is known, nut angle in degrees that a further reduction is expected to need. */
export interface TravelToGo {
  minMm: number
  maxMm: number
  angleDeg: { min: number; max: number } | null
}

/** What the zero point looks like from the travel: too early, travel was counted before the ring grew. */
export type ZeroPoint = 'fits' | 'too-early' | 'too-late' | 'not-told'

export interface TravelFacts {
  /** What the expectation goes by: this mount's own ratio once two steps tell it, else that of the band's source. */
  ratio: TravelRatio
  /** From the newest step to the near edge of the window, the middle of the aim (null without one) and the far edge. */
  toNear: TravelToGo
  toAim: TravelToGo | null
  toFar: TravelToGo
  /** Travel of the newest step against its reduction. */
  check: RatioCheck
  zero: ZeroPoint
}

interface TravelInput {
  steps: readonly ReadStep[]
  band: Band
  taper: Taper
  boreMm: number
  pitchMm: number | null
  /** Further reductions, µm. */
  left: { nearUm: number; aimUm: number | null; farUm: number }
}

/** What travel and nut angle are still expected, and whether the travel so far goes with the reduction. R-RATIO. */
export function travelFacts(input: TravelInput): TravelFacts {
  const { steps, band, taper, boreMm, pitchMm, left } = input
  const measured = measuredRatio(steps, taper, boreMm)
  const ratio = measured ?? expectedRatio(band, taper, boreMm)
  const toGo = (um: number): TravelToGo => travelToGo(um, ratio, pitchMm)
  const now = steps.at(-1)
  const check = checkRatio({
    driveUpMm: now?.travelMm ?? null,
    reductionUm: now?.reductionUm ?? 0,
    taper,
    boreMm,
  })
  return {
    ratio,
    toNear: toGo(left.nearUm),
    toAim: left.aimUm === null ? null : toGo(left.aimUm),
    toFar: toGo(left.farUm),
    check,
    zero: zeroPointOf(check, measured),
  }
}

/** Travel over reduction by the source of the band where it gives a travel, else the range that steel allows. R-RATIO. */
export function expectedRatio({ driveUpMm, minUm, maxUm }: Band, taper: Taper, boreMm: number): TravelRatio {
  if (driveUpMm === null) return { ...steelRange(taper, boreMm), from: 'usual-range' }
  const ends = [(driveUpMm.min * 1000) / minUm, (driveUpMm.max * 1000) / maxUm]
  return { min: Math.min(...ends), max: Math.max(...ends), from: 'band-source' }
}

/**
 * Travel over reduction of this mount so far, from its first to its latest step with a travel, so that the zero point does not
 * matter. The range is that of one standard uncertainty of the difference (R-U), kept within what steel allows (R-RATIO).
 * null until two steps differ by more than that uncertainty, and where the range lies outside what steel allows.
 */
export function measuredRatio(steps: readonly ReadStep[], taper: Taper, boreMm: number): TravelRatio | null {
  const travelled = steps.flatMap((step) => (step.travelMm === null ? [] : [{ ...step, travelMm: step.travelMm }]))
  const [first, last] = [travelled.at(0), travelled.at(-1)]
  if (!first || !last || first === last) return null
  const travelUm = (last.travelMm - first.travelMm) * 1000
  const reducedUm = last.reductionUm - first.reductionUm
  const uncertainUm = Math.hypot(first.standardUm, last.standardUm)
  if (travelUm <= 0 || reducedUm <= uncertainUm) return null
  const steel = steelRange(taper, boreMm)
  const min = Math.max(steel.min, travelUm / (reducedUm + uncertainUm))
  const max = Math.min(steel.max, travelUm / (reducedUm - uncertainUm))
  return min <= max ? { min, max, from: 'this-mount' } : null
}

/** Travel and angle for a further reduction in µm (below nothing counts as nothing) by a range of ratios. R-RATIO. */
export function travelToGo(reductionUm: number, ratio: TravelRatio, pitchMm: number | null): TravelToGo {
  const mm = (by: number): number => Math.round(Math.min(50_000, Math.max(0, reductionUm) * by)) / 1000
  const [minMm, maxMm] = [mm(ratio.min), mm(ratio.max)]
  if (pitchMm === null) return { minMm, maxMm, angleDeg: null }
  return { minMm, maxMm, angleDeg: { min: nutAngleDeg(minMm, pitchMm), max: nutAngleDeg(maxMm, pitchMm) } }
}

/** The zero point is at fault where the ratio from zero is outside what steel allows and the ratio between steps is inside. */
function zeroPointOf({ verdict }: RatioCheck, measured: TravelRatio | null): ZeroPoint {
  if (verdict === 'plausible') return 'fits'
  if (verdict === 'not-done' || measured === null) return 'not-told'
  return verdict === 'too-high' ? 'too-early' : 'too-late'
}

function steelRange(taper: Taper, boreMm: number): { min: number; max: number } {
  const { lowest, highest } = checkRatio({ driveUpMm: null, reductionUm: 0, taper, boreMm })
  return { min: lowest, max: highest }
}
