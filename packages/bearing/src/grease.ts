import { InputError, requireWithin } from './input-error.ts'
import { formula, type Sourced } from './source.ts'

export type GreaseEntry = 'side' | 'outer-ring-groove'

export interface Dose extends Sourced {
  doseG: number
  entry: GreaseEntry
}

/**
 * Mass of a replenishing dose in g: 0.005 · D · B from the side, 0.002 · D · B through groove and holes of the outer ring.
 * D and B in mm. R-DOSE.
 */
export function greaseDose(outsideDiameterMm: number, widthMm: number, entry: GreaseEntry): Dose {
  requireWithin(outsideDiameterMm, 'outsideDiameterMm', 10, 3000, 'mm')
  requireWithin(widthMm, 'widthMm', 3, 1000, 'mm')
  const perMm2 = entry === 'side' ? 5 : 2
  return {
    doseG: Math.round(perMm2 * outsideDiameterMm * widthMm) / 1000,
    entry,
    source: formula(`${entry === 'side' ? '0.005' : '0.002'} · D · B grams`),
    rule: 'R-DOSE',
    cautions: ['Keep the lip, relief plug or outlet open while pressing grease in.'],
  }
}

export interface Strokes extends Sourced {
  strokes: number
  /** What those strokes deliver. */
  deliveredG: number
}

/** Whole strokes of a calibrated gun that give at least a dose, both in g (0.1 to 10 g a stroke). R-DOSE. */
export function gunStrokes(doseG: number, gramsPerStroke: number): Strokes {
  requireWithin(doseG, 'doseG', 0, 20_000, 'g')
  requireWithin(gramsPerStroke, 'gramsPerStroke', 0.1, 10, 'g')
  const strokeMg = Math.round(gramsPerStroke * 1000)
  const strokes = Math.ceil(Math.round(doseG * 1000) / strokeMg)
  return {
    strokes,
    deliveredG: (strokes * strokeMg) / 1000,
    source: formula('dose over the weighed stroke, rounded up'),
    rule: 'R-DOSE',
    cautions: ['Weigh ten strokes of the gun to know one.'],
  }
}

export interface DoseCheck extends Sourced {
  verdict: 'too-little' | 'counts' | 'over' | 'far-over'
  /** Given over planned, 3 decimals. */
  ratio: number
  /** Within 70 to 150 % of plan: it counts for compliance. */
  counts: boolean
}

/**
 * Compares a dose given with the planned one, in g: 70 to 150 % counts (R-COMPL); above 150 % is a deviation, above 200 %
 * the outlet has to be open and the temperature watched. R-OVER.
 */
export function checkDose(givenG: number, plannedG: number): DoseCheck {
  requireWithin(givenG, 'givenG', 0, 20_000, 'g')
  requireWithin(plannedG, 'plannedG', 0.1, 20_000, 'g')
  const [given, planned] = [Math.round(givenG * 1000), Math.round(plannedG * 1000)]
  const verdict = doseVerdict(given * 100, planned)
  const cautions = {
    'too-little': ['Less than 70 % of the planned dose: it counts as a wrong amount.'],
    counts: [],
    over: ['More than 1.5 times the planned dose: record it as a deviation and watch the temperature.'],
    'far-over': [
      'More than twice the planned dose: open the outlet and watch the temperature; a rise above 15 K for more than 24 h means taking the excess out.',
    ],
  }
  return {
    verdict,
    ratio: Math.round((given / planned) * 1000) / 1000,
    counts: verdict === 'counts',
    source: formula('dose given over dose planned'),
    rule: 'R-OVER, R-COMPL',
    cautions: cautions[verdict],
  }
}

function doseVerdict(givenHundredfold: number, planned: number): DoseCheck['verdict'] {
  if (givenHundredfold < 70 * planned) return 'too-little'
  if (givenHundredfold <= 150 * planned) return 'counts'
  return givenHundredfold <= 200 * planned ? 'over' : 'far-over'
}

/** Mean of outside diameter and bore, in mm. */
export function meanDiameterMm(boreMm: number, outsideDiameterMm: number): number {
  if (!(boreMm > 0 && boreMm < outsideDiameterMm && outsideDiameterMm <= 5000)) {
    throw new InputError('conflict', 'outsideDiameterMm', 'The outside diameter has to be larger than the bore.')
  }
  return (boreMm + outsideDiameterMm) / 2
}

export interface SpeedIndex extends Sourced {
  /** n · dm in mm/min; n · D where the outer ring turns. */
  index: number
  verdict: 'slow' | 'normal' | 'consult-maker'
}

/**
 * Speed index n · dm of a greased spherical roller bearing: slow below 50 000, normal to 200 000, above it the maker is
 * asked. Where the outer ring turns or the load swings, D stands for dm. R-SPEED, R-LOAD.
 */
export function speedIndex(
  speedRpm: number,
  bearing: { boreMm: number; outsideDiameterMm: number },
  outerRingTurns = false,
): SpeedIndex {
  requireWithin(speedRpm, 'speedRpm', 0.1, 50_000, 'rev/min')
  const meanMm = meanDiameterMm(bearing.boreMm, bearing.outsideDiameterMm)
  const index = speedRpm * (outerRingTurns ? bearing.outsideDiameterMm : meanMm)
  const verdict = index < 50_000 ? 'slow' : index <= 200_000 ? 'normal' : 'consult-maker'
  const cautions =
    verdict === 'consult-maker' ? ['Fast for a greased bearing: ask its maker about grease and fill.'] : []
  return { index, verdict, source: formula('speed times mean diameter'), rule: 'R-SPEED', cautions }
}
