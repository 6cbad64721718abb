import { requireClearance } from './clearance-text.ts'
import { InputError, requireWithin } from './input-error.ts'
import { formula, type Sourced } from './source.ts'
import { toUm } from './units.ts'

/** Thermal expansion of bearing steel, 1/K. */
export const steelExpansionPerK = 12e-6

export interface OperatingClearance extends Sourced {
  operatingUm: number
  changeUm: number
  verdict: 'left' | 'gone'
}

export interface OperatingInput {
  mountedUm: number
  boreMm: number
  outsideDiameterMm: number
  innerRingC: number
  outerRingC: number
  /** Outer raceway from the maker; else (d + 3 D) / 4 is taken, an estimate. */
  outerRacewayMm?: number | null
}

/**
 * Clearance in operation in µm: mounted clearance less α · ΔT · Do, with ΔT inner minus outer ring (−60 to 250 °C each) and
 * α = 12·10⁻⁶/K. At zero or below the bearing runs hot and tires early. Load and tight housings are not in it.
 */
export function operatingClearance(input: OperatingInput): OperatingClearance {
  const { boreMm, outsideDiameterMm, innerRingC, outerRingC } = input
  const mountedUm = requireClearance(input.mountedUm, 'mountedUm')
  requireWithin(innerRingC, 'innerRingC', -60, 250, '°C')
  requireWithin(outerRingC, 'outerRingC', -60, 250, '°C')
  requireWithin(outsideDiameterMm, 'outsideDiameterMm', 10, 3000, 'mm')
  const raceway = input.outerRacewayMm ?? (boreMm + 3 * outsideDiameterMm) / 4
  if (!(boreMm > 0 && boreMm < raceway && raceway < outsideDiameterMm)) {
    throw new InputError(
      'conflict',
      'outerRacewayMm',
      'The outer raceway has to lie between bore and outside diameter.',
    )
  }
  const changeUm = toUm(-steelExpansionPerK * (innerRingC - outerRingC) * raceway, 'mm')
  const operatingUm = toUm(mountedUm + changeUm, 'um')
  const gone = operatingUm <= 0
  const estimate = typeof input.outerRacewayMm === 'number' ? [] : ['The outer raceway is estimated as (d + 3 D) / 4.']
  const warning = gone ? ['No clearance is left at these temperatures: hot running and early fatigue.'] : []
  return {
    operatingUm,
    changeUm,
    verdict: gone ? 'gone' : 'left',
    source: formula('mounted clearance less α · ΔT · Do'),
    rule: 'R-RES',
    cautions: [...warning, ...estimate, 'A tight or oval housing and the load change it further.'],
  }
}
