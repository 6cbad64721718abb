import type { Taper } from '@shaftbook/standards/table'
import { InputError, requireWithin } from './input-error.ts'
import { formula, type Sourced } from './source.ts'
import { toNanometres, umFromNanometres } from './units.ts'

/** Length of taper per unit of diameter: 12 for K, 30 for K30. */
export const taperLength: Readonly<Record<Taper, number>> = Object.freeze({ '1:12': 12, '1:30': 30 })

export interface RatioCheck extends Sourced {
  verdict: 'plausible' | 'too-low' | 'too-high' | 'not-done'
  /** Travel over reduction, 3 decimals; null when not done. */
  ratio: number | null
  lowest: number
  highest: number
}

export interface RatioInput {
  /** Axial travel from the zero point in mm, null when it was not measured. */
  driveUpMm: number | null
  reductionUm: number
  taper: Taper | null
  boreMm: number
}

/**
 * Plausibility of the axial travel against the reduction: 12 to 20 on a 1:12 taper, 30 to 50 on 1:30; below 40 mm bore
 * up to 24 and 60. Below 12 (30) is impossible for steel, above means creep, a hollow shaft or a wrong reading. R-RATIO.
 */
export function checkRatio(input: RatioInput): RatioCheck {
  const length = input.taper === null ? 12 : taperLength[input.taper]
  const highest = length * (input.boreMm < 40 ? 2 : 20 / 12)
  const base = { lowest: length, highest, source: formula('travel over reduction on a taper'), rule: 'R-RATIO' }
  const notDone = { ...base, verdict: 'not-done', ratio: null } as const
  if (input.driveUpMm === null || input.taper === null) return { ...notDone, cautions: [] }
  requireWithin(input.driveUpMm, 'driveUpMm', 0, 50, 'mm')
  const [travelNm, reductionNm] = [toNanometres(input.driveUpMm, 'mm'), toNanometres(input.reductionUm, 'um')]
  if (reductionNm <= 0) {
    return { ...notDone, cautions: ['The travel can’t be compared: the clearance was not reduced.'] }
  }
  const ratio = Math.round((travelNm / reductionNm) * 1000) / 1000
  if (travelNm < length * reductionNm) {
    const caution = `Travel over reduction is ${ratio}, below ${length}: impossible for steel, so a reading or the zero point is wrong.`
    return { ...base, verdict: 'too-low', ratio, cautions: [caution] }
  }
  if (travelNm > highest * reductionNm) {
    const caution = `Travel over reduction is ${ratio}, above ${highest}: sleeve creep, a hollow shaft, a loose start or a wrong before reading.`
    return { ...base, verdict: 'too-high', ratio, cautions: [caution] }
  }
  return { ...base, verdict: 'plausible', ratio, cautions: [] }
}

/** Nut rotation in degrees that drives a ring by an axial travel in mm: 360 · s / P, thread pitch P in mm. */
export function nutAngleDeg(travelMm: number, pitchMm: number): number {
  requireWithin(travelMm, 'travelMm', 0, 50, 'mm')
  requireWithin(pitchMm, 'pitchMm', 0.2, 20, 'mm')
  return (360 * travelMm) / pitchMm
}

/** Axial travel in mm of a nut turned by an angle in degrees: P · φ / 360. Inverse of nutAngleDeg. */
export function travelFromAngleMm(angleDeg: number, pitchMm: number): number {
  requireWithin(angleDeg, 'angleDeg', 0, 36_000, 'degrees')
  requireWithin(pitchMm, 'pitchMm', 0.2, 20, 'mm')
  return (angleDeg * pitchMm) / 360
}

export interface LockStep extends Sourced {
  /** Angle between two places where the nut can be locked. */
  stepDeg: number
  axialUm: number
  /** What one step adds to the diameter of the taper, at most. */
  wedgeUm: number
}

/**
 * Lock step of a nut with its tab washer: with s slots and N tabs the nut locks every 360 / lcm(s, N) degrees, 360/(4 N)
 * for four slots and an odd N. Only ever go forward to the next place. R-TAB.
 */
export function lockStep(nut: { slots: number; tabs: number; pitchMm: number; taper: Taper }): LockStep {
  const places = leastCommonMultiple(wholeCount(nut.slots, 'slots'), wholeCount(nut.tabs, 'tabs'))
  const stepDeg = 360 / places
  const axialUm = travelFromAngleMm(stepDeg, nut.pitchMm) * 1000
  return {
    stepDeg,
    axialUm: umFromNanometres(toNanometres(axialUm, 'um')),
    wedgeUm: umFromNanometres(toNanometres(axialUm / taperLength[nut.taper], 'um')),
    source: formula('slots of the nut and tabs of the washer'),
    rule: 'R-TAB',
    cautions: ['Go forward to the next slot, never back. Count the tabs of the washer in the hand.'],
  }
}

function wholeCount(value: number, field: string): number {
  requireWithin(value, field, 1, 100, '')
  if (!Number.isInteger(value)) throw new InputError('not-a-number', field, `${field} has to be a whole number.`)
  return value
}

function leastCommonMultiple(a: number, b: number): number {
  const divisor = (x: number, y: number): number => (y === 0 ? x : divisor(y, x % y))
  return (a * b) / divisor(a, b)
}
