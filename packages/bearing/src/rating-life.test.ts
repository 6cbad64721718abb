import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from './input-error.ts'
import {
  basicLifeMillions,
  contaminationRange,
  fatigueLimitKn,
  lifeHours,
  modificationFactor,
  ratingLife,
} from './rating-life.ts'

const load = (fatigueLimitKnown: number, loadKn: number): { fatigueLimitKn: number; loadKn: number } => ({
  fatigueLimitKn: fatigueLimitKnown,
  loadKn,
})

describe('rating life, ISO 281', () => {
  it('C 390, P 45 kN: L10 is 1337 million revolutions, 37 143 h at 600 rev/min', () => {
    expect(basicLifeMillions(390, 45, 'roller')).toBeCloseTo(1337.13, 2)
    expect(lifeHours(basicLifeMillions(390, 45, 'roller'), 600)).toBeCloseTo(37_142.5, 1)
  })

  it('a doubled load costs a ball bearing a factor of 8, a roller bearing one of 10.08', () => {
    expect(basicLifeMillions(100, 10, 'ball') / basicLifeMillions(100, 20, 'ball')).toBeCloseTo(8, 9)
    expect(basicLifeMillions(100, 10, 'roller') / basicLifeMillions(100, 20, 'roller')).toBeCloseTo(10.079, 3)
  })

  it.each([
    // by the formulas written out in another language, see the exponents of the standard
    [2, 0.5, 60, 60, 'roller', 3.0813],
    [0.3, 0.2, 60, 60, 'roller', 0.15755],
    [0.7, 0.5, 60, 30, 'roller', 1.67232],
    [4, 0.8, 60, 20, 'roller', 50],
    [9, 0.8, 60, 60, 'roller', 16.92538],
    [2, 0.5, 5, 10, 'ball', 25.63429],
  ] as const)('aISO for κ %s, eC %s, Cu %s, P %s of a %s bearing is %s', (kappa, eC, cu, p, element, wanted) => {
    expect(modificationFactor(kappa, eC, load(cu, p), element)).toBeCloseTo(wanted, 4)
  })

  it.each([0.4, 1])('aISO of rollers is continuous at κ = %s', (kappa) => {
    const below = modificationFactor(kappa - 1e-9, 0.5, load(60, 60), 'roller')
    expect(Math.abs(below / modificationFactor(kappa, 0.5, load(60, 60), 'roller') - 1)).toBeLessThan(0.001)
  })

  it('aISO never falls with a thicker film, a cleaner lubricant or a lighter load, and stays from 0.1 to 50', () => {
    const kappa = fc.double({ min: 0.1, max: 4, noNaN: true })
    const eC = fc.double({ min: 0, max: 1, noNaN: true })
    const p = fc.double({ min: 5, max: 300, noNaN: true })
    fc.assert(
      fc.property(kappa, eC, p, fc.constantFrom('roller' as const, 'ball' as const), (k, clean, loadKn, element) => {
        const base = modificationFactor(k, clean, load(60, loadKn), element)
        expect(base).toBeGreaterThanOrEqual(0.1)
        expect(base).toBeLessThanOrEqual(50)
        expect(modificationFactor(k, Math.min(1, clean * 1.1), load(60, loadKn), element)).toBeGreaterThanOrEqual(base)
        expect(modificationFactor(k, clean, load(60, loadKn * 0.9), element)).toBeGreaterThanOrEqual(base)
        expect(modificationFactor(k * 1.05, clean, load(60, loadKn), element)).toBeGreaterThanOrEqual(base * 0.9999)
      }),
    )
  })

  it('below κ 0.1 there is no factor', () => {
    expect(() => modificationFactor(0.099, 0.5, load(60, 60), 'roller')).toThrow(InputError)
  })

  it('Cu is C0/8.2 to 100 mm and less above: C0 500 kN gives 60.98 and, at 140 mm, 55.12 kN', () => {
    expect(fatigueLimitKn(500, 100)).toBeCloseTo(60.976, 3)
    expect(fatigueLimitKn(500, 140)).toBeCloseTo(55.121, 3)
  })

  it('eC of typical contamination is 0.1 to 0.3 below 100 mm and 0.2 to 0.4 from there', () => {
    expect(contaminationRange('typical_contamination', 99.9)).toEqual({ min: 0.1, max: 0.3 })
    expect(contaminationRange('typical_contamination', 100)).toEqual({ min: 0.2, max: 0.4 })
    expect(contaminationRange('very_severe_contamination', 100)).toEqual({ min: 0, max: 0 })
  })

  const input = {
    element: 'roller',
    ratingKn: 390,
    staticRatingKn: 500,
    loadKn: 45,
    speedRpm: 600,
    meanDiameterMm: 140,
    kappa: 2,
    contamination: 0.3,
  } as const

  it('the modified life is a1 · aISO · L10', () => {
    const life = ratingLife({ ...input, reliabilityPercent: 95 })
    expect(life.a1).toBe(0.64)
    expect(life.modifiedHours).toBeCloseTo(0.64 * life.aIso * 37_142.5, 0)
    expect(life.cautions.join(' ')).toContain('estimated')
  })

  it('a light load warns of skidding, a heavy one of leaving the formula', () => {
    expect(ratingLife({ ...input, loadKn: 7 }).cautions.join(' ')).toContain('skid')
    expect(ratingLife({ ...input, loadKn: 200 }).cautions.join(' ')).toContain('half of C')
  })

  it('a reliability between the levels, or a ball bearing without Cu, is refused', () => {
    expect(() => ratingLife({ ...input, reliabilityPercent: 92 })).toThrow(InputError)
    expect(() => ratingLife({ ...input, element: 'ball' })).toThrow(InputError)
  })
})
