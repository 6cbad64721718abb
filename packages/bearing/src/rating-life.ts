import { ratingLifeFactor } from '@shaftbook/standards/rating-life'
import { InputError, requireWithin } from './input-error.ts'
import { standardRow, type Sourced } from './source.ts'

export type RollingElement = 'roller' | 'ball'

/** Cleanliness of the lubricant by the levels of ISO 281, from clean to dirty. */
export const cleanlinessLevels = [
  'extreme_cleanliness',
  'high_cleanliness',
  'normal_cleanliness',
  'slight_contamination',
  'typical_contamination',
  'severe_contamination',
  'very_severe_contamination',
] as const
export type Cleanliness = (typeof cleanlinessLevels)[number]

/** Basic rating life L10 in million revolutions: (C/P)^(10/3) for rollers, (C/P)³ for balls; C and P in kN (ISO 281). */
export function basicLifeMillions(ratingKn: number, loadKn: number, element: RollingElement): number {
  requireWithin(ratingKn, 'ratingKn', 0.1, 100_000, 'kN')
  requireWithin(loadKn, 'loadKn', ratingKn / 1000, ratingKn, 'kN')
  return (ratingKn / loadKn) ** (element === 'roller' ? 10 / 3 : 3)
}

/** Hours that a number of million revolutions takes at a speed in rev/min (0.1 to 50 000). */
export function lifeHours(millions: number, speedRpm: number): number {
  requireWithin(speedRpm, 'speedRpm', 0.1, 50_000, 'rev/min')
  return (millions * 1_000_000) / (60 * speedRpm)
}

/** Dynamic equivalent load in kN: P = X · Fr + Y · Fa with the factors of the maker's sheet; X and Y 0 to 10. */
export function equivalentLoadKn(radialKn: number, axialKn: number, factors: { x: number; y: number }): number {
  requireWithin(radialKn, 'radialKn', 0, 100_000, 'kN')
  requireWithin(axialKn, 'axialKn', 0, 100_000, 'kN')
  requireWithin(factors.x, 'x', 0, 10, '')
  requireWithin(factors.y, 'y', 0, 10, '')
  return factors.x * radialKn + factors.y * axialKn
}

/** Range of the contamination factor eC for a level and mean diameter in mm (ISO 281:2007). */
export function contaminationRange(level: Cleanliness, meanDiameterMm: number): { min: number; max: number } {
  requireWithin(meanDiameterMm, 'meanDiameterMm', 5, 3000, 'mm')
  const attribute = meanDiameterMm < 100 ? 'eC_Dpw_below_100mm' : 'eC_Dpw_100mm_and_above'
  const lookup = ratingLifeFactor('eC_level', level, attribute)
  if (!lookup.found) throw new InputError('malformed', 'level', lookup.reason)
  const [min = Number.NaN, max = min] = String(lookup.row.value).split('-').map(Number)
  return { min, max }
}

/** Fatigue load limit Cu in kN of a roller bearing, estimated from its static rating C0 and mean diameter (ISO 281:2007). */
export function fatigueLimitKn(staticRatingKn: number, meanDiameterMm: number): number {
  requireWithin(staticRatingKn, 'staticRatingKn', 0.1, 200_000, 'kN')
  requireWithin(meanDiameterMm, 'meanDiameterMm', 5, 3000, 'mm')
  const base = staticRatingKn / 8.2
  return meanDiameterMm <= 100 ? base : base * (100 / meanDiameterMm) ** 0.3
}

/**
 * Life modification factor aISO of a radial bearing (ISO 281:2007): κ from 0.1 (above 4 counts as 4), eC 0 to 1, Cu and P in
 * kN. At most 50. Throws below κ 0.1, where the standard gives nothing.
 */
export function modificationFactor(
  kappa: number,
  contamination: number,
  load: { fatigueLimitKn: number; loadKn: number },
  element: RollingElement,
): number {
  requireWithin(kappa, 'kappa', 0.1, 10_000, '')
  requireWithin(contamination, 'contamination', 0, 1, '')
  requireWithin(load.fatigueLimitKn, 'fatigueLimitKn', 0.001, 100_000, 'kN')
  requireWithin(load.loadKn, 'loadKn', 0.001, 100_000, 'kN')
  const used = Math.min(kappa, 4)
  const zone = used < 0.4 ? '0.1_0.4' : used < 1 ? '0.4_1' : '1_4'
  const coefficient = (name: string): number => factor('aISO_coefficients', `radial_${element}_kappa_${zone}`, name)
  const exponents =
    element === 'roller' ? { inner: 1, load: 0.4, outer: -9.185 } : { inner: 0.83, load: 1 / 3, outer: -9.3 }
  // At κ = 0.1 rounding of the standard's constants makes the roller term −0.0001: no film gives no more than nothing.
  const lubricant = Math.max(0, coefficient('A') - coefficient('B') / used ** coefficient('e'))
  const x = (contamination * load.fatigueLimitKn) / load.loadKn
  const bracket = 1 - lubricant ** exponents.inner * x ** exponents.load
  return bracket <= 0 ? 50 : Math.min(50, 0.1 * bracket ** exponents.outer)
}

export interface RatingLife extends Sourced {
  basicMillions: number
  basicHours: number
  modifiedHours: number
  a1: number
  aIso: number
  loadOverRating: number
}

export interface RatingLifeInput {
  element: RollingElement
  ratingKn: number
  staticRatingKn: number
  loadKn: number
  speedRpm: number
  meanDiameterMm: number
  kappa: number
  contamination: number
  /** One of the standard's levels: 90, 95, 96, 97, 98, 99 and beyond. */
  reliabilityPercent?: number
  /** Cu from the maker; else estimated from C0 (rollers only). */
  fatigueLimitKn?: number | null
}

/** Basic and modified rating life in hours: Lnm = a1 · aISO · L10 (ISO 281:2007). A yardstick, no substitute for the record. */
export function ratingLife(input: RatingLifeInput): RatingLife {
  const { element, ratingKn, loadKn, speedRpm } = input
  const given = input.fatigueLimitKn ?? null
  if (given === null && element === 'ball') {
    throw new InputError('conflict', 'fatigueLimitKn', 'For ball bearings the fatigue load limit comes from the maker.')
  }
  const limit = given ?? fatigueLimitKn(input.staticRatingKn, input.meanDiameterMm)
  const basicMillions = basicLifeMillions(ratingKn, loadKn, element)
  const basicHours = lifeHours(basicMillions, speedRpm)
  const reliability = input.reliabilityPercent ?? 90
  const aIso = modificationFactor(input.kappa, input.contamination, { fatigueLimitKn: limit, loadKn }, element)
  const lookup = ratingLifeFactor('a1_reliability', String(reliability), 'a1')
  if (!lookup.found) throw new InputError('malformed', 'reliabilityPercent', lookup.reason)
  const a1 = Number(lookup.row.value)
  return {
    basicMillions,
    basicHours,
    modifiedHours: a1 * aIso * basicHours,
    a1,
    aIso,
    loadOverRating: loadKn / ratingKn,
    source: standardRow(lookup, 'a1, aISO, L10'),
    rule: 'ISO 281',
    cautions: lifeCautions(input, given === null),
  }
}

/** Least load in kN, as a share of C, below which rollers skid (2 %) or balls do (1 %): rule of thumb. */
export function minimumLoadKn(ratingKn: number, element: RollingElement): number {
  requireWithin(ratingKn, 'ratingKn', 0.1, 100_000, 'kN')
  return ratingKn * (element === 'roller' ? 0.02 : 0.01)
}

function lifeCautions(input: RatingLifeInput, estimated: boolean): string[] {
  const skids = input.loadKn < minimumLoadKn(input.ratingKn, input.element)
  return [
    'A catalogue prediction is a yardstick: the record of this position says more.',
    ...(skids ? ['The load is below the usual minimum: rolling elements may skid.'] : []),
    ...(estimated ? ['The fatigue load limit is estimated from the static rating.'] : []),
    ...(input.kappa > 4 ? ['κ above 4 counts as 4.'] : []),
    ...(input.loadKn > input.ratingKn / 2 ? ['P is above half of C: outside the formula, ask the engineer.'] : []),
  ]
}

function factor(table: string, key: string, attribute: string): number {
  const lookup = ratingLifeFactor(table, key, attribute)
  if (!lookup.found || typeof lookup.row.value !== 'number') {
    throw new InputError('malformed', key, lookup.found ? `${attribute} of ${key} is not a number.` : lookup.reason)
  }
  return lookup.row.value
}
