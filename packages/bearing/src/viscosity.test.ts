import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from './input-error.ts'
import { requiredViscosity, viscosityAt, viscosityRatio } from './viscosity.ts'

const at40 = { celsius: 40, mm2PerS: 220 }
const at100 = { celsius: 100, mm2PerS: 19 }

describe('viscosity', () => {
  it('ASTM D341 goes through both points, either way round', () => {
    expect(viscosityAt(40, at40, at100).mm2PerS).toBeCloseTo(220, 8)
    expect(viscosityAt(100, at100, at40).mm2PerS).toBeCloseTo(19, 9)
  })

  it('an oil of 220 and 19 mm²/s has 51.7 mm²/s at 70 °C', () => {
    // Straight line by hand: log log (ν + 0.7) is 0.370087 at 2.495752 and 0.112439 at 2.571883; at 2.535484 it is 0.235625.
    expect(viscosityAt(70, at40, at100).mm2PerS).toBeCloseTo(51.7, 1)
  })

  it('a warmer oil is never thicker', () => {
    fc.assert(
      fc.property(fc.integer({ min: -30, max: 199 }), (celsius) => {
        expect(viscosityAt(celsius + 1, at40, at100).mm2PerS).toBeLessThan(viscosityAt(celsius, at40, at100).mm2PerS)
      }),
    )
  })

  it('a temperature outside the two points is marked as less sure', () => {
    expect(viscosityAt(70, at40, at100).cautions).toEqual([])
    expect(viscosityAt(120, at40, at100).cautions).toHaveLength(1)
    expect(viscosityAt(0, at100, at40).cautions).toHaveLength(1)
  })

  it('ν1 of dm 140 is 18.8 mm²/s at 600 rev/min and 9.8 at 1500', () => {
    expect(requiredViscosity(600, 140)).toBeCloseTo(18.805, 3)
    expect(requiredViscosity(1500, 140)).toBeCloseTo(9.82, 3)
  })

  it.each([
    [0.49, 'too-thin'],
    [0.51, 'thin'],
    [1.49, 'thin'],
    [1.51, 'good'],
    [3.99, 'good'],
    [4.01, 'thick'],
  ])('κ of %s is %s', (kappa, verdict) => {
    const ratio = viscosityRatio(kappa * requiredViscosity(600, 140), 600, 140)
    expect(ratio.verdict).toBe(verdict)
    expect(ratio.kappa).toBeCloseTo(kappa, 9)
  })

  it('points that contradict an oil are refused', () => {
    expect(() => viscosityAt(70, at40, at40)).toThrow(InputError)
    expect(() => viscosityAt(70, at40, { celsius: 100, mm2PerS: 300 })).toThrow(InputError)
    expect(() => viscosityAt(Number.NaN, at40, at100)).toThrow(InputError)
  })
})
