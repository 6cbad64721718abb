import {
  contaminationRange,
  equivalentLoadKn,
  fatigueLimitKn,
  minimumLoadKn,
  type Cleanliness,
  type RollingElement,
} from './rating-life.ts'
import { formula, type Source, type Sourced } from './source.ts'

const iso281: Source = { ...formula('ISO 281'), edition: '2007', kind: 'standard' }

export interface EquivalentLoad extends Sourced {
  equivalentKn: number
}

/** Dynamic equivalent load P = X · Fr + Y · Fa in kN (0 to 100 000), X and Y from the maker's sheet (0 to 10). ISO 281. */
export function equivalentLoad(radialKn: number, axialKn: number, factors: { x: number; y: number }): EquivalentLoad {
  const cautions = ['X and Y depend on the bearing and on Fa / Fr: take them from its maker’s sheet.']
  return { equivalentKn: equivalentLoadKn(radialKn, axialKn, factors), source: iso281, rule: 'ISO 281', cautions }
}

export interface Contamination extends Sourced {
  lowest: number
  highest: number
}

/** Contamination factor eC as a range, for a level of cleanliness and a mean diameter in mm (5 to 3000). ISO 281. */
export function contamination(level: Cleanliness, meanDiameterMm: number): Contamination {
  const { min, max } = contaminationRange(level, meanDiameterMm)
  const cautions = ['A range: take the lower end where the seals or the fill are doubtful.']
  return { lowest: min, highest: max, source: { ...iso281, certainty: 'high' }, rule: 'ISO 281', cautions }
}

export interface FatigueLimit extends Sourced {
  fatigueLimitKn: number
}

/** Fatigue load limit Cu of a roller bearing in kN from its static rating C0, an estimate. ISO 281. */
export function fatigueLimit(staticRatingKn: number, meanDiameterMm: number): FatigueLimit {
  const cautions = ['An estimate for roller bearings: the maker’s own figure comes first.']
  const value = fatigueLimitKn(staticRatingKn, meanDiameterMm)
  return { fatigueLimitKn: value, source: iso281, rule: 'ISO 281', cautions }
}

export interface MinimumLoad extends Sourced {
  minimumKn: number
  verdict: 'enough' | 'too-light' | 'not-judged'
}

/** Least load in kN against skidding, 2 % of C for rollers and 1 % for balls, and whether a load reaches it. Rule of thumb. */
export function minimumLoad(ratingKn: number, element: RollingElement, loadKn: number | null): MinimumLoad {
  const minimumKn = minimumLoadKn(ratingKn, element)
  const light = loadKn !== null && loadKn < minimumKn
  return {
    minimumKn,
    verdict: loadKn === null ? 'not-judged' : light ? 'too-light' : 'enough',
    source: formula(element === 'roller' ? '0.02 · C' : '0.01 · C'),
    rule: 'minimum load',
    cautions: light ? ['So lightly loaded, rolling elements may skid: a smaller bearing, or more load.'] : [],
  }
}
