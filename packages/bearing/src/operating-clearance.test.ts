import { describe, expect, it } from 'vitest'
import { InputError } from './input-error.ts'
import { operatingClearance } from './operating-clearance.ts'

const ring = { mountedUm: 73, boreMm: 100, outsideDiameterMm: 180, outerRingC: 60 }

describe('clearance in operation', () => {
  it.each([
    [10, -19],
    [20, -38],
  ])('d 100, D 180: a difference of %i K takes %i µm', (kelvin, change) => {
    const result = operatingClearance({ ...ring, innerRingC: 60 + kelvin })
    expect(Math.round(result.changeUm)).toBe(change)
    expect(result.operatingUm).toBeCloseTo(73 + result.changeUm, 9)
    expect(result.verdict).toBe('left')
  })

  it('at zero the clearance is gone, with the warning', () => {
    // α · ΔT · Do = 12e-6 · 20 · 160 mm = 38.4 µm
    const gone = operatingClearance({ ...ring, mountedUm: 38.4, innerRingC: 80 })
    expect(gone).toMatchObject({ operatingUm: 0, verdict: 'gone' })
    expect(gone.cautions[0]).toContain('No clearance is left')
    expect(operatingClearance({ ...ring, mountedUm: 38.5, innerRingC: 80 }).verdict).toBe('left')
  })

  it('an outer ring that is warmer than the inner one adds clearance', () => {
    expect(operatingClearance({ ...ring, innerRingC: 50 }).operatingUm).toBeGreaterThan(73)
  })

  it("the maker's raceway replaces the estimate and its caution", () => {
    const result = operatingClearance({ ...ring, innerRingC: 70, outerRacewayMm: 162 })
    expect(result.changeUm).toBeCloseTo(-19.44, 9)
    expect(result.cautions.join(' ')).not.toContain('estimated')
  })

  it('impossible numbers are refused', () => {
    expect(() => operatingClearance({ ...ring, innerRingC: 500 })).toThrow(InputError)
    expect(() => operatingClearance({ ...ring, innerRingC: 60, outerRacewayMm: 200 })).toThrow(InputError)
    expect(() => operatingClearance({ ...ring, mountedUm: -1, innerRingC: 60 })).toThrow(InputError)
  })
})
