import type { Taper } from '@shaftbook/standards/table'
import { InputError, requireWithin } from './input-error.ts'
import { formula, type Sourced } from './source.ts'
import { taperLength } from './drive-up.ts'
import { toUm } from './units.ts'

/** Young's modulus of steel in MPa. */
export const steelModulusMpa = 206_000

export interface RingGeometry {
  boreMm: number
  outsideDiameterMm: number
  /** Diameter of the inner raceway from the maker; else (3 d + D) / 4 is taken, an estimate. */
  innerRacewayMm?: number | null
  /** Bore of a hollow shaft; 0 or left out for a solid one. */
  shaftBoreMm?: number | null
}

export interface DriveUpForecast extends Sourced {
  travelMm: number
  interferenceUm: number
  reductionUm: number
  contactPressureMpa: number
  /** Hoop stress at the bore of the ring. */
  hoopStressMpa: number
  /** Travel over reduction. */
  ratio: number
  /** Force to drive the ring in N, by a friction of 0.15 unless given; null without a width. */
  driveForceN: number | null
}

export interface ForecastInput extends RingGeometry {
  travelMm: number
  taper: Taper
  /** Loss of diameter in µm by flattened roughness and settling of the sleeve. */
  smoothingUm?: number | null
  /** Width of the ring, for the force. */
  widthMm?: number | null
  /** 0.12 to 0.18 dry, 0.08 to 0.12 oiled; 0.15 where it is not given. */
  friction?: number | null
}

const usualFriction = 0.15

/** No drive-up comes near it; beyond it a number is wrong. */
const highestPressureMpa = 500

/** Smoothing of roughness Rz 4 and 6 µm: 0.8 · (4 + 6). */
export const usualSmoothingUm = 8

/**
 * Forecast of the reduction that an axial travel gives, by the thick-ring formulas of Lamé, steel on steel, outer ring
 * free in its housing. Travel in mm from a zero point found by resistance. An estimate: the reading decides.
 */
export function forecastDriveUp(input: ForecastInput): DriveUpForecast {
  requireWithin(input.travelMm, 'travelMm', 0, 50, 'mm')
  const { k, hollow, estimated } = ringGrowth(input)
  const interferenceUm = (input.travelMm * 1000) / taperLength[input.taper] - smoothing(input.smoothingUm)
  if (interferenceUm <= 0) {
    const message = 'The travel is used up by smoothing before the ring grows: drive further or check the zero point.'
    throw new InputError('too-small', 'travelMm', message)
  }
  const reductionUm = interferenceUm * k * hollow
  const contactPressureMpa = ((steelModulusMpa * interferenceUm) / (2000 * input.boreMm)) * (1 - k * k) * hollow
  if (contactPressureMpa > highestPressureMpa) {
    const message = `That far, the ring would be pressed with ${Math.round(contactPressureMpa)} MPa, more than it can bear: check travel, taper and dimensions.`
    throw new InputError('too-large', 'travelMm', message)
  }
  return {
    travelMm: input.travelMm,
    interferenceUm: toUm(interferenceUm, 'um'),
    reductionUm: toUm(reductionUm, 'um'),
    contactPressureMpa,
    hoopStressMpa: (contactPressureMpa * (1 + k * k)) / (1 - k * k),
    ratio: (input.travelMm * 1000) / reductionUm,
    driveForceN: forceOf(input, contactPressureMpa),
    ...forecastSource(estimated),
  }
}

/** Axial travel in mm that a reduction in µm is estimated to need: the inverse of forecastDriveUp. */
export function travelForReductionMm(reductionUm: number, input: Omit<ForecastInput, 'travelMm'>): number {
  requireWithin(reductionUm, 'reductionUm', 0, 2000, 'µm')
  const { k, hollow } = ringGrowth(input)
  return ((reductionUm / (k * hollow) + smoothing(input.smoothingUm)) * taperLength[input.taper]) / 1000
}

/** Axial force in N that drives the ring: p · π · d · B · (µ + t/2). Friction 0.12–0.18 dry, 0.08–0.12 oiled. */
export function driveForceN(
  contactPressureMpa: number,
  ring: { boreMm: number; widthMm: number; taper: Taper },
  friction: number,
): number {
  requireWithin(contactPressureMpa, 'contactPressureMpa', 0, highestPressureMpa, 'MPa')
  requireWithin(friction, 'friction', 0.02, 0.5, '')
  const area = Math.PI * ring.boreMm * ring.widthMm
  return contactPressureMpa * area * (friction + 1 / (2 * taperLength[ring.taper]))
}

/** Loss of diameter in µm where two surfaces of roughness RzA and RzB (µm) are pressed together: 0.8 · (RzA + RzB). */
export function smoothingUm(rzAUm: number, rzBUm: number): number {
  requireWithin(rzAUm, 'rzAUm', 0, 100, 'µm')
  requireWithin(rzBUm, 'rzBUm', 0, 100, 'µm')
  return 0.8 * (rzAUm + rzBUm)
}

function forceOf(input: ForecastInput, contactPressureMpa: number): number | null {
  const { boreMm, taper, widthMm } = input
  if (typeof widthMm !== 'number') return null
  requireWithin(widthMm, 'widthMm', 3, 1000, 'mm')
  return driveForceN(contactPressureMpa, { boreMm, widthMm, taper }, input.friction ?? usualFriction)
}

function smoothing(given: number | null | undefined): number {
  const value = given ?? usualSmoothingUm
  requireWithin(value, 'smoothingUm', 0, 200, 'µm')
  return value
}

/** k = d/F of the ring and the factor of a hollow shaft, (1 - k0²)/(1 - k0² k²). */
export function ringGrowth(ring: RingGeometry): { k: number; hollow: number; estimated: boolean } {
  requireWithin(ring.boreMm, 'boreMm', 3, 2000, 'mm')
  const raceway = ring.innerRacewayMm ?? (3 * ring.boreMm + ring.outsideDiameterMm) / 4
  const shaftBore = ring.shaftBoreMm ?? 0
  if (!(ring.boreMm < raceway && raceway < ring.outsideDiameterMm)) {
    throw new InputError(
      'conflict',
      'outsideDiameterMm',
      'Bore, inner raceway and outside diameter have to grow in that order.',
    )
  }
  requireWithin(shaftBore, 'shaftBoreMm', 0, ring.boreMm * 0.95, 'mm')
  const k = ring.boreMm / raceway
  const k0 = shaftBore / ring.boreMm
  const estimated = ring.innerRacewayMm === undefined || ring.innerRacewayMm === null
  return { k, hollow: (1 - k0 * k0) / (1 - k0 * k0 * k * k), estimated }
}

function forecastSource(estimated: boolean): Sourced {
  const raceway = estimated ? ['The inner raceway is estimated as (3 d + D) / 4: the maker has the real one.'] : []
  return {
    source: formula('thick ring under pressure (Lamé), steel on steel'),
    rule: 'R-RED',
    cautions: [...raceway, 'A forecast only: the measured reduction decides, travel is the cross-check.'],
  }
}
