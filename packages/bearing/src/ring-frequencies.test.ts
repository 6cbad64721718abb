import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from './input-error.ts'
import { ringFrequencies } from './ring-frequencies.ts'

const geometry = { elements: 18, elementDiameterMm: 20, pitchDiameterMm: 140, contactAngleDeg: 10, speedRpm: 600 }

describe('ring frequencies', () => {
  it('18 rollers of 20 on 140 mm, 10°, 600 rev/min', () => {
    // 10 turns a second, slope 20/140 · cos 10° = 0.140687
    const result = ringFrequencies(geometry)
    expect(result.outerRingHz).toBeCloseTo(90 * (1 - 0.140687), 3)
    expect(result.innerRingHz).toBeCloseTo(90 * (1 + 0.140687), 3)
    expect(result.cageHz).toBeCloseTo(5 * (1 - 0.140687), 4)
    expect(result.rollerSpinHz).toBeCloseTo(35 * (1 - 0.140687 ** 2), 3)
    expect(result.rollerPassHz).toBeCloseTo(70 * (1 - 0.140687 ** 2), 3)
  })

  it('outer and inner together are elements times turns, and the cage passes each element past the outer ring', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 60 }), fc.integer({ min: 1, max: 4000 }), (elements, speedRpm) => {
        const result = ringFrequencies({ ...geometry, elements, speedRpm })
        expect(result.outerRingHz + result.innerRingHz).toBeCloseTo((elements * speedRpm) / 60, 6)
        expect(result.cageHz * elements).toBeCloseTo(result.outerRingHz, 6)
      }),
    )
  })

  it('impossible geometry is refused', () => {
    expect(() => ringFrequencies({ ...geometry, elementDiameterMm: 100 })).toThrow(InputError)
    expect(() => ringFrequencies({ ...geometry, elements: 17.5 })).toThrow(InputError)
  })
})
