import { InputError, requireWithin } from './input-error.ts'
import { formula, type Sourced } from './source.ts'
import { toNanometres } from './units.ts'

export type RingPlan = Sourced & { sentence: string } & (
    | { kind: 'rings'; count: 1 | 2; widthMm: number; offCentreMm: number }
    | { kind: 'none'; endPlayEachSideMm: number; neededMm: number; enough: boolean }
    | { kind: 'refused' }
  )

export interface RingInput {
  /** Measured in the housing, never taken from a list: it differs by make. */
  seatWidthMm: number
  bearingWidthMm: number
  locating: boolean
  /** One ring of the full difference on the lock-nut side, the bearing then sits off centre. */
  oneRing?: boolean
  /** For a non-locating position: growth of the shaft from the locating one. */
  shaftLengthMm?: number
  temperatureRiseK?: number
}

/**
 * Locating rings from the measured seat: two of (seat − B)/2 or one of seat − B; a non-locating bearing gets none and
 * needs end play on both sides of at least 12·10⁻⁶ · length · rise. Widths in mm. R-RING.
 */
export function locatingRings(input: RingInput): RingPlan {
  requireWithin(input.seatWidthMm, 'seatWidthMm', 5, 1000, 'mm')
  requireWithin(input.bearingWidthMm, 'bearingWidthMm', 3, 1000, 'mm')
  const sourced = { source: formula('seat width less bearing width'), rule: 'R-RING', cautions: [measure] }
  const roomNm = toNanometres(input.seatWidthMm, 'mm') - toNanometres(input.bearingWidthMm, 'mm')
  if (roomNm < 0)
    return {
      ...sourced,
      kind: 'refused',
      sentence: 'The bearing is wider than the housing seat: wrong housing or bearing.',
    }
  if (!input.locating) return { ...sourced, ...freeEnd(input, roomNm / 2_000_000) }
  if (roomNm === 0) {
    return {
      ...sourced,
      kind: 'refused',
      sentence: 'The seat is as wide as the bearing: it locates without rings, check the drawing.',
    }
  }
  return { ...sourced, ...rings(roomNm, input.oneRing === true) }
}

const measure = 'Measure the seat: its width differs by make for the same housing size.'

function rings(roomNm: number, single: boolean): Omit<Extract<RingPlan, { kind: 'rings' }>, keyof Sourced> {
  if (single) {
    const widthMm = roomNm / 1_000_000
    const sentence = `One ring of ${widthMm} mm on the lock-nut side; the bearing sits ${widthMm / 2} mm off centre: check shoulder and seal.`
    return { kind: 'rings', count: 1, widthMm, offCentreMm: widthMm / 2, sentence }
  }
  const widthMm = roomNm / 2_000_000
  return { kind: 'rings', count: 2, widthMm, offCentreMm: 0, sentence: `Two rings of ${widthMm} mm, one each side.` }
}

function freeEnd(input: RingInput, eachSideMm: number): Omit<Extract<RingPlan, { kind: 'none' }>, keyof Sourced> {
  const [length, rise] = [input.shaftLengthMm ?? 0, input.temperatureRiseK ?? 0]
  requireWithin(length, 'shaftLengthMm', 0, 50_000, 'mm')
  requireWithin(rise, 'temperatureRiseK', 0, 300, 'K')
  if (length > 0 !== rise > 0) {
    throw new InputError(
      'conflict',
      'shaftLengthMm',
      'The growth of the shaft needs both its length and its rise of temperature.',
    )
  }
  const neededMm = Math.round(12e-6 * length * rise * 1000) / 1000
  const enough = toNanometres(eachSideMm, 'mm') >= toNanometres(neededMm, 'mm')
  const sentence = enough
    ? `No rings: ${eachSideMm} mm of end play on each side, ${neededMm} mm needed.`
    : `No rings, and the end play of ${eachSideMm} mm on each side is less than the ${neededMm} mm that the shaft grows.`
  return { kind: 'none', endPlayEachSideMm: eachSideMm, neededMm, enough, sentence }
}
