import { describe, expect, it } from 'vitest'
import { hotFit, reductionByFit, usualSeat } from './fit.ts'
import { InputError } from './input-error.ts'

const ring = { boreMm: 100, outsideDiameterMm: 180 }

describe('cylindrical bore on an interference fit', () => {
  it('R-RED d 100, D 180, 40 µm of interference less 8 µm of smoothing: 26.7 µm of reduction', () => {
    // F = (300 + 180)/4 = 120, k = 100/120; (40 − 8) · 0.8333 = 26.67
    const fit = reductionByFit({ ...ring, interferenceUm: 40, smoothingUm: 8 })
    expect(fit.effectiveUm).toBe(32)
    expect(fit.reductionUm).toBeCloseTo(26.667, 3)
    expect(fit.share).toBeGreaterThan(0.75)
    expect(fit.share).toBeLessThan(0.85)
  })

  it('R-RED a hollow shaft gives way: with a 50 mm hole 0.908 of it is left', () => {
    const solid = reductionByFit({ ...ring, interferenceUm: 40 })
    const hollow = reductionByFit({ ...ring, interferenceUm: 40, shaftBoreMm: 50 })
    expect(hollow.reductionUm / solid.reductionUm).toBeCloseTo(0.9076, 3)
  })

  it('an interference that smoothing uses up reduces nothing, and says that the ring may creep', () => {
    const fit = reductionByFit({ ...ring, interferenceUm: 6, smoothingUm: 8 })
    expect(fit).toMatchObject({ effectiveUm: 0, reductionUm: 0 })
    expect(fit.cautions[0]).toContain('creep')
  })

  it.each([
    [35, 'k5'],
    [40, 'k5'],
    [65, 'm5'],
    [100, 'm6'],
    [101, 'n6'],
    [280, 'p6'],
  ])('a bore of %i mm usually sits on %s', (boreMm, shaftClass) => {
    expect(usualSeat(boreMm)).toMatchObject({ found: true, shaftClass, housingClass: 'H7' })
  })

  it('the housing follows from what turns and what runs hot; above 280 mm there is no row', () => {
    expect(usualSeat(100, { shaftRunsHot: true })).toMatchObject({ housingClass: 'G7' })
    expect(usualSeat(100, { outerRingTurns: true })).toMatchObject({ housingClass: 'N7 or P7' })
    expect(usualSeat(300)).toMatchObject({ found: false, rule: 'usual seat' })
  })
})

describe('hot fit', () => {
  it('d 100, I 60 µm: 92 K above the shaft', () => {
    const fit = hotFit({ interferenceUm: 60, boreMm: 100 })
    expect(Math.round(fit.heatingK)).toBe(92)
    expect(fit).toMatchObject({ limitC: 120, verdict: 'within-limit' })
    expect(Math.round(fit.ringC)).toBe(112)
  })

  it('a warmer workshop or a sealed bearing brings it over the limit', () => {
    expect(hotFit({ interferenceUm: 60, boreMm: 100, ambientC: 35 }).verdict).toBe('too-hot')
    expect(hotFit({ interferenceUm: 60, boreMm: 100, sealed: true })).toMatchObject({ limitC: 80, verdict: 'too-hot' })
  })

  it('always says: never a flame', () => {
    expect(hotFit({ interferenceUm: 20, boreMm: 100 }).cautions.join(' ')).toContain('never by a flame')
  })

  it('impossible numbers are refused', () => {
    expect(() => hotFit({ interferenceUm: -1, boreMm: 100 })).toThrow(InputError)
    expect(() => reductionByFit({ ...ring, interferenceUm: Number.NaN })).toThrow(InputError)
    expect(() => usualSeat(0)).toThrow(InputError)
  })
})
