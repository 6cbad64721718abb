import { describe, expect, it } from 'vitest'
import { InputError } from './input-error.ts'
import { checkShaft, inchOrMetric } from './shaft.ts'

describe('shaft', () => {
  it.each([
    [0, 'inside-h9'],
    [-0.087, 'inside-h9'],
    [-0.088, 'inside-h10'],
    [-0.14, 'inside-h10'],
    [-0.141, 'below-h10'],
    [0.001, 'above-nominal'],
  ])('R-SHAFT 100 mm with %s mm off is %s', (off, verdict) => {
    expect(checkShaft(100, [100 + off])).toMatchObject({ found: true, verdict })
  })

  it.each([
    [80, -0.074, -0.12],
    [120, -0.087, -0.14],
    [180, -0.1, -0.16],
    [250, -0.115, -0.185],
  ])('R-SHAFT h9 and h10 of %i mm end at %s and %s', (nominal, h9, h10) => {
    expect(checkShaft(nominal, [nominal + h9])).toMatchObject({ verdict: 'inside-h9' })
    expect(checkShaft(nominal, [nominal + h10])).toMatchObject({ verdict: 'inside-h10' })
    expect(checkShaft(nominal, [nominal + h10 - 0.001])).toMatchObject({ verdict: 'below-h10' })
  })

  it('R-SHAFT the bottom of h9 at 100 mm eats 1.04 mm of travel', () => {
    expect(checkShaft(100, [99.95, 99.913, 99.93])).toMatchObject({
      smallestUm: -87,
      largestUm: -50,
      travelLostMm: 1.044,
    })
  })

  it('readings that differ by more than IT5 say so', () => {
    const check = checkShaft(100, [99.99, 99.97])
    expect(check.found && check.cautions.join(' ')).toContain('20 µm')
  })

  it('no reading, or one of another shaft, is refused', () => {
    expect(() => checkShaft(100, [])).toThrow(InputError)
    expect(() => checkShaft(100, [75])).toThrow(InputError)
    expect(checkShaft(600, [600])).toMatchObject({ found: false })
  })
})

describe('inch or metric', () => {
  it.each([
    [69.85, '2 3/4', 70],
    [74.61, '2 15/16', 75],
    [75, '2 15/16', 75],
    [100, '3 15/16', 100],
    [125.41, '4 15/16', 125],
    [139.7, '5 1/2', 140],
  ])('R-INCH %s mm is asked about: %s in or %i mm', (mm, inchShaft, metricShaftMm) => {
    expect(inchOrMetric(mm)).toMatchObject({ kind: 'ask', inchShaft, metricShaftMm })
  })

  it("R-INCH the position's answer settles it, a lone size needs none", () => {
    expect(inchOrMetric(74.61, 'inch')).toMatchObject({ kind: 'clear', system: 'inch' })
    expect(inchOrMetric(90)).toMatchObject({ kind: 'clear', system: 'metric' })
    expect(inchOrMetric(97.3)).toMatchObject({ kind: 'clear', system: null })
  })
})
