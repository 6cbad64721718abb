import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkDose, greaseDose, gunStrokes, meanDiameterMm, speedIndex } from './grease.ts'
import { greaseInterval, type IntervalInput } from './grease-interval.ts'
import { InputError } from './input-error.ts'

const good: IntervalInput['levels'] = {
  temperature: 'below-65',
  dirt: 'light-soft',
  moisture: 'below-80',
  vibration: 'below-5',
  shaft: 'horizontal',
  bearing: 'spherical-roller',
}
const hours = (input: Partial<IntervalInput>): number => {
  const result = greaseInterval({ speedRpm: 1000, boreMm: 100, levels: good, loadOverRating: 0.05, ...input })
  if (result.kind !== 'interval') throw new Error(result.sentence)
  return result.intervalHours
}

describe('grease dose', () => {
  it('R-DOSE a 22220 (D 180, B 46) takes 41.4 g from the side and 16.6 g through the outer ring', () => {
    expect(greaseDose(180, 46, 'side').doseG).toBe(41.4)
    expect(greaseDose(180, 46, 'outer-ring-groove').doseG).toBe(16.56)
  })

  it('R-DOSE strokes are rounded up to whole ones, and exactly fitting strokes stay', () => {
    expect(gunStrokes(41.4, 1.38)).toMatchObject({ strokes: 30, deliveredG: 41.4 })
    expect(gunStrokes(41.4, 1.3)).toMatchObject({ strokes: 32, deliveredG: 41.6 })
    expect(gunStrokes(0, 1)).toMatchObject({ strokes: 0 })
  })

  it('R-DOSE the strokes give at least the dose, and one less does not', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500_000 }), fc.integer({ min: 100, max: 10_000 }), (doseMg, strokeMg) => {
        const { strokes } = gunStrokes(doseMg / 1000, strokeMg / 1000)
        expect(strokes * strokeMg).toBeGreaterThanOrEqual(doseMg)
        expect((strokes - 1) * strokeMg).toBeLessThan(doseMg)
      }),
    )
  })

  it.each([
    [27.9, 'too-little', false],
    [28, 'counts', true],
    [60, 'counts', true],
    [60.1, 'over', false],
    [80, 'over', false],
    [80.1, 'far-over', false],
  ])('R-OVER and R-COMPL %s g of 40 planned is %s', (givenG, verdict, counts) => {
    expect(checkDose(givenG, 40)).toMatchObject({ verdict, counts })
  })

  it('R-SPEED the mean diameter of a 22220 is 140 mm', () => {
    expect(meanDiameterMm(100, 180)).toBe(140)
  })

  it('R-SPEED a 22220 at 1000 rev/min has an index of 140 000: normal', () => {
    expect(speedIndex(1000, { boreMm: 100, outsideDiameterMm: 180 })).toMatchObject({
      index: 140_000,
      verdict: 'normal',
    })
  })

  it.each([
    [357, 'slow'],
    [1428, 'normal'],
    [1429, 'consult-maker'],
  ])('R-SPEED at %i rev/min it is %s', (rpm, verdict) => {
    expect(speedIndex(rpm, { boreMm: 100, outsideDiameterMm: 180 }).verdict).toBe(verdict)
  })

  it('R-LOAD with a turning outer ring D stands for dm', () => {
    expect(speedIndex(1000, { boreMm: 100, outsideDiameterMm: 180 }, true).index).toBe(180_000)
  })

  it('impossible numbers are refused', () => {
    expect(() => greaseDose(Number.NaN, 46, 'side')).toThrow(InputError)
    expect(() => gunStrokes(10, 0)).toThrow(InputError)
    expect(() => checkDose(10, 0)).toThrow(InputError)
    expect(() => meanDiameterMm(180, 100)).toThrow(InputError)
  })
})

describe('grease interval', () => {
  it('R-INT d 100 at 1000 rev/min: base 1000 h', () => {
    expect(hours({})).toBeCloseTo(1000, 9)
  })

  it('R-INT 72 °C, light abrasive, RH 85 %, 6 mm/s, horizontal: K 0.084 and 84 h, each factor shown', () => {
    const levels: IntervalInput['levels'] = {
      ...good,
      temperature: '65-to-80',
      dirt: 'light-abrasive',
      moisture: '80-to-90',
      vibration: '5-to-10',
    }
    const result = greaseInterval({ speedRpm: 1000, boreMm: 100, levels, loadOverRating: 0.05 })
    expect(result.product).toBeCloseTo(0.084, 12)
    expect(result.kind === 'interval' && result.intervalHours).toBeCloseTo(84, 9)
    expect(result.factors.map(({ name, factor }) => [name, factor])).toEqual([
      ['temperature', 0.5],
      ['dirt', 0.4],
      ['moisture', 0.7],
      ['vibration', 0.6],
      ['bearing', 1],
      ['shaft', 1],
      ['load', 1],
    ])
  })

  it('R-INT where the bracket is not positive the formula does not apply', () => {
    // 14e6 / (7000 · √125) − 4 · 125 = 178.9 − 500
    expect(greaseInterval({ speedRpm: 7000, boreMm: 125, levels: good }).kind).toBe('outside-formula')
  })

  it('R-INT the result is capped at 8760 h unless the engineer lifts it', () => {
    // 14e6 / (50 · 10) − 400 = 27600
    expect(hours({ speedRpm: 50 })).toBe(8760)
    expect(hours({ speedRpm: 50, capLifted: true })).toBeCloseTo(27_600, 6)
  })

  it.each([
    [0.1, 1000],
    [0.15, 700],
    [0.2, 500],
    [0.201, 300],
  ])('R-LOAD P = %s C leaves %i h of 1000', (loadOverRating, expected) => {
    expect(hours({ loadOverRating })).toBeCloseTo(expected, 9)
  })

  it('R-LOAD an outer ring that turns halves the interval', () => {
    expect(hours({ outerRingTurns: true })).toBeCloseTo(500, 9)
  })

  it('R-INT by halving: 85 °C halves, 100 °C quarters, vertical halves, and no temperature step is applied as well', () => {
    const levels = { ...good, temperature: 'above-93' } as const
    expect(hours({ levels, method: { kind: 'halving', outerRingC: 70 } })).toBeCloseTo(1000, 9)
    expect(hours({ levels, method: { kind: 'halving', outerRingC: 85 } })).toBeCloseTo(500, 9)
    expect(hours({ levels, method: { kind: 'halving', outerRingC: 100 } })).toBeCloseTo(250, 9)
    const upright = { ...levels, shaft: 'vertical' } as const
    expect(hours({ levels: upright, method: { kind: 'halving', outerRingC: 85 } })).toBeCloseTo(250, 9)
  })
})
