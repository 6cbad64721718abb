import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkRatio, lockStep, nutAngleDeg, travelFromAngleMm } from './drive-up.ts'
import { InputError } from './input-error.ts'

describe('drive-up', () => {
  const k = { taper: '1:12', boreMm: 100 } as const

  it.each([
    [0.6, 50, 'plausible'],
    [0.599, 50, 'too-low'],
    [1, 50, 'plausible'],
    [1.001, 50, 'too-high'],
  ])('R-RATIO %s mm for %i µm on 1:12 is %s', (driveUpMm, reductionUm, verdict) => {
    expect(checkRatio({ ...k, driveUpMm, reductionUm }).verdict).toBe(verdict)
  })

  it.each([
    [39.9, 1.2, 'plausible'],
    [39.9, 1.201, 'too-high'],
    [40, 1.2, 'too-high'],
  ])('R-RATIO bore %s mm with ratio %s x 20 is %s', (boreMm, driveUpMm, verdict) => {
    expect(checkRatio({ taper: '1:12', boreMm, driveUpMm, reductionUm: 50 }).verdict).toBe(verdict)
  })

  it('R-RATIO on 1:30 runs from 30 to 50', () => {
    const steep = { taper: '1:30', boreMm: 200, reductionUm: 100 } as const
    expect(checkRatio({ ...steep, driveUpMm: 2.999 }).verdict).toBe('too-low')
    expect(checkRatio({ ...steep, driveUpMm: 5 }).verdict).toBe('plausible')
    expect(checkRatio({ ...steep, driveUpMm: 5.001 })).toMatchObject({ verdict: 'too-high', highest: 50 })
  })

  it('R-RATIO is not done without a travel, without a taper, or without a reduction', () => {
    expect(checkRatio({ ...k, driveUpMm: null, reductionUm: 50 }).verdict).toBe('not-done')
    expect(checkRatio({ ...k, taper: null, driveUpMm: 1, reductionUm: 50 }).verdict).toBe('not-done')
    expect(checkRatio({ ...k, driveUpMm: 1, reductionUm: 0 })).toMatchObject({ verdict: 'not-done', ratio: null })
  })

  it('M100x2 driven 0.70 to 0.90 mm turns 126 to 162 degrees; Tr300x4 driven 2.0 to 3.0 mm turns 180 to 270', () => {
    expect(nutAngleDeg(0.7, 2)).toBeCloseTo(126, 9)
    expect(nutAngleDeg(0.9, 2)).toBeCloseTo(162, 9)
    expect(nutAngleDeg(2, 4)).toBe(180)
    expect(nutAngleDeg(3, 4)).toBe(270)
  })

  it('travel and angle invert each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 50, noNaN: true }), fc.constantFrom(0.75, 1.5, 2, 3, 4, 5), (mm, pitch) => {
        expect(travelFromAngleMm(nutAngleDeg(mm, pitch), pitch)).toBeCloseTo(mm, 10)
      }),
    )
  })

  it('R-TAB M100x2 with 4 slots and 17 tabs locks every 5.29 degrees: 29 µm of travel, 2.5 µm of wedge', () => {
    const step = lockStep({ slots: 4, tabs: 17, pitchMm: 2, taper: '1:12' })
    expect(step.stepDeg).toBeCloseTo(5.294, 3)
    expect(Math.round(step.axialUm)).toBe(29)
    expect(step.wedgeUm).toBeCloseTo(2.45, 2)
  })

  it('R-TAB tabs that share a factor with the slots lock less often: 4 slots and 6 tabs only every 30 degrees', () => {
    expect(lockStep({ slots: 4, tabs: 6, pitchMm: 2, taper: '1:12' }).stepDeg).toBe(30)
  })

  it('numbers outside the trade are refused', () => {
    expect(() => nutAngleDeg(-1, 2)).toThrow(InputError)
    expect(() => nutAngleDeg(1, 0)).toThrow(InputError)
    expect(() => lockStep({ slots: 0, tabs: 17, pitchMm: 2, taper: '1:12' })).toThrow(InputError)
    expect(() => checkRatio({ ...k, driveUpMm: Number.NaN, reductionUm: 50 })).toThrow(InputError)
  })
})
