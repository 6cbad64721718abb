import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from './input-error.ts'
import { driveForceN, forecastDriveUp, smoothingUm, travelForReductionMm } from './thick-ring.ts'

const ring = { boreMm: 100, outsideDiameterMm: 180, taper: '1:12' } as const

describe('thick ring on a taper', () => {
  it('d 100, D 180, s 0.80 mm, 8 µm smoothing, solid shaft: 58.7 µm, 48.9 µm, 18.5 MPa, 102 MPa, 51 kN', () => {
    const forecast = forecastDriveUp({ ...ring, travelMm: 0.8, smoothingUm: 8 })
    expect(forecast.interferenceUm).toBeCloseTo(58.7, 1)
    expect(forecast.reductionUm).toBeCloseTo(48.9, 1)
    expect(forecast.contactPressureMpa).toBeCloseTo(18.5, 1)
    expect(Math.round(forecast.hoopStressMpa)).toBe(102)
    const force = driveForceN(forecast.contactPressureMpa, { boreMm: 100, widthMm: 46, taper: '1:12' }, 0.15)
    expect(Math.round(force / 1000)).toBe(51)
    expect(forecast.driveForceN).toBeNull()
    expect(forecastDriveUp({ ...ring, travelMm: 0.8, widthMm: 46 }).driveForceN).toBeCloseTo(force, 6)
  })

  it('with a 50 mm hole in the shaft the reduction falls to 44.4 µm', () => {
    expect(forecastDriveUp({ ...ring, travelMm: 0.8, shaftBoreMm: 50 }).reductionUm).toBeCloseTo(44.4, 1)
  })

  it.each([0, 50])(
    'agrees with ring and shaft (hole %i mm) solved from the stresses of two cylinders',
    (shaftBoreMm) => {
      // Lamé from first principles: pressure from the two radial compliances, then growth of the outer surface.
      const [d, F, I, E, nu] = [0.1, 0.12, 58.6667e-6, 206e9, 0.3]
      const hole = shaftBoreMm / 1000
      const ringCompliance = (d / E) * ((F * F + d * d) / (F * F - d * d) + nu)
      const shaftCompliance = (d / E) * ((d * d + hole * hole) / (d * d - hole * hole) - nu)
      const pressure = I / (ringCompliance + shaftCompliance)
      const growth = ((2 * pressure * d * d) / (E * (F * F - d * d))) * F
      const forecast = forecastDriveUp({ ...ring, travelMm: 0.8, shaftBoreMm })
      expect(forecast.contactPressureMpa).toBeCloseTo(pressure / 1e6, 3)
      expect(forecast.reductionUm).toBeCloseTo(growth * 1e6, 2)
    },
  )

  it('travelForReductionMm inverts the forecast', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 2, noNaN: true }),
        fc.integer({ min: 0, max: 60 }),
        (travelMm, shaftBoreMm) => {
          const { reductionUm } = forecastDriveUp({ ...ring, travelMm, shaftBoreMm })
          expect(travelForReductionMm(reductionUm, { ...ring, shaftBoreMm })).toBeCloseTo(travelMm, 4)
        },
      ),
    )
  })

  it('roughness of Rz 4 and 6 µm smooths 8 µm', () => {
    expect(smoothingUm(4, 6)).toBe(8)
  })

  it('a travel that smoothing uses up, and impossible rings, are refused', () => {
    expect(() => forecastDriveUp({ ...ring, travelMm: 0.09 })).toThrow(InputError)
    expect(() => forecastDriveUp({ ...ring, outsideDiameterMm: 90, travelMm: 0.8 })).toThrow(InputError)
    expect(() => forecastDriveUp({ ...ring, shaftBoreMm: 99, travelMm: 0.8 })).toThrow(InputError)
    expect(() => forecastDriveUp({ ...ring, travelMm: 40 })).toThrow('more than it can bear')
  })
})
