import { InputError, requireWithin } from './input-error.ts'
import { formula, type Sourced } from './source.ts'

/** An oil's kinematic viscosity in mm²/s at a temperature in °C. */
export interface ViscosityPoint {
  celsius: number
  mm2PerS: number
}

export interface OilViscosity extends Sourced {
  mm2PerS: number
}

/**
 * Kinematic viscosity in mm²/s of an oil at a temperature, from two points of its sheet (usually 40 and 100 °C):
 * log log (ν + 0.7) is linear in log T (ASTM D341). −30 to 200 °C, 2 to 100 000 mm²/s.
 */
export function viscosityAt(celsius: number, one: ViscosityPoint, other: ViscosityPoint): OilViscosity {
  requireWithin(celsius, 'celsius', -30, 200, '°C')
  const [a, b] = [checkedPoint(one), checkedPoint(other)]
  if (Math.abs(a.logT - b.logT) < 1e-6)
    throw new InputError('conflict', 'otherC', 'The two points have to differ in temperature.')
  const slope = (b.w - a.w) / (b.logT - a.logT)
  if (slope >= 0)
    throw new InputError('conflict', 'otherMm2PerS', 'An oil gets thinner as it warms: check the two points.')
  const w = a.w + slope * (Math.log10(celsius + 273.15) - a.logT)
  const mm2PerS = 10 ** (10 ** w) - 0.7
  requireWithin(mm2PerS, 'viscosity', 0.2, 10_000_000, 'mm²/s')
  const outside = celsius < Math.min(one.celsius, other.celsius) || celsius > Math.max(one.celsius, other.celsius)
  return {
    mm2PerS,
    source: { ...formula('log log (ν + 0.7) linear in log T'), kind: 'standard', row: 'ASTM D341' },
    rule: 'ASTM D341',
    cautions: outside ? ['The temperature lies outside the two points: the further, the less sure.'] : [],
  }
}

/** Viscosity ν1 in mm²/s that a bearing needs: 45 000 · n^−0.83 · dm^−0.5 below 1000 rev/min, 4500 · n^−0.5 · dm^−0.5 above (ISO 281). */
export function requiredViscosity(speedRpm: number, meanDiameterMm: number): number {
  requireWithin(speedRpm, 'speedRpm', 0.1, 50_000, 'rev/min')
  requireWithin(meanDiameterMm, 'meanDiameterMm', 5, 3000, 'mm')
  const bySpeed = speedRpm < 1000 ? 45_000 * speedRpm ** -0.83 : 4500 * speedRpm ** -0.5
  return bySpeed / Math.sqrt(meanDiameterMm)
}

export interface ViscosityRatio extends Sourced {
  kappa: number
  requiredMm2PerS: number
  verdict: 'good' | 'thin' | 'too-thin' | 'thick'
}

/** Viscosity ratio κ = ν / ν1 at running temperature: wanted 1.5 to 4; below 0.5 EP additives and the engineer. */
export function viscosityRatio(mm2PerS: number, speedRpm: number, meanDiameterMm: number): ViscosityRatio {
  requireWithin(mm2PerS, 'mm2PerS', 0.2, 1_000_000, 'mm²/s')
  const requiredMm2PerS = requiredViscosity(speedRpm, meanDiameterMm)
  const kappa = mm2PerS / requiredMm2PerS
  const verdict = kappa < 0.5 ? 'too-thin' : kappa < 1.5 ? 'thin' : kappa <= 4 ? 'good' : 'thick'
  const cautions = {
    good: [],
    thin: ['The film is thinner than wanted (κ below 1.5): a thicker oil or EP additives help.'],
    'too-thin': ['κ is below 0.5: use EP additives and ask the engineer.'],
    thick: ['κ is above 4: thicker than needed, it may churn and run warm.'],
  }
  const source = { ...formula('κ = ν / ν1 (ISO 281)'), edition: '2007' }
  return { kappa, requiredMm2PerS, verdict, source, rule: 'ISO 281', cautions: cautions[verdict] }
}

function checkedPoint({ celsius, mm2PerS }: ViscosityPoint): { logT: number; w: number } {
  requireWithin(celsius, 'celsius', -30, 200, '°C')
  requireWithin(mm2PerS, 'mm2PerS', 2, 100_000, 'mm²/s')
  return { logT: Math.log10(celsius + 273.15), w: Math.log10(Math.log10(mm2PerS + 0.7)) }
}
