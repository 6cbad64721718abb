import { rowForBore } from '@shaftbook/standards/clearance-classes'
import { InputError } from './input-error.ts'
import { formatLength, fromUm, parseLength, toNanometres, toUm, unitLabels, type LengthUnit } from './units.ts'

/** No clearance of a tabled bearing is larger; anything above is refused. */
export const largestClearanceUm = 2000

/**
 * Above this a clearance is questioned when the bore is unknown: it is larger than any class, C5 included, of every
 * bore to 200 mm. With a bore the threshold is 1.5 times the largest C5 of that bore, since a worn bearing exceeds C5.
 */
export const questionedAboveUm = 500

/** Below this (but not zero) a clearance is questioned: no feeler blade is so thin, millimetres were probably meant. */
export const questionedBelowUm = 5

/** A suggestion below this is left out: no class of a tabled bearing starts lower. */
const likelyAboveUm = 10

export interface ClearanceContext {
  /** Bore of the bearing in mm, if known. */
  boreMm?: number
  /** Name of the argument for errors. */
  field?: string
}

export interface Suggestion {
  valueUm: number
  label: string
}

export type ClearanceAnswer =
  | { kind: 'clearance'; valueUm: number; unit: LengthUnit }
  | { kind: 'ask'; valueUm: number; unit: LengthUnit; sentence: string; suggestions: Suggestion[] }

/**
 * Reads a typed radial internal clearance. Below 0 or above 2 mm it throws InputError; a number that is probably a slip
 * of the decimal mark or of the unit comes back as a question with what may have been meant (values in µm). R-UNIT.
 */
export function parseClearance(text: string, unit: LengthUnit, context: ClearanceContext = {}): ClearanceAnswer {
  const parsed = parseLength(text, unit, context.field ?? 'clearance')
  return screenClearance(parsed.valueUm, { ...context, unit: parsed.unit })
}

/** The same check for a clearance that is a number of µm already; `unit` is the one that the person typed it in. */
export function screenClearance(
  valueUm: number,
  context: ClearanceContext & { unit?: LengthUnit } = {},
): ClearanceAnswer {
  const unit = context.unit ?? 'um'
  const exactUm = requireClearance(valueUm, context.field ?? 'clearance', unit)
  const highest = thresholdUm(context.boreMm)
  if (exactUm === 0 || (exactUm >= questionedBelowUm && exactUm <= highest))
    return { kind: 'clearance', valueUm: exactUm, unit }
  const suggestions = likelyMeant(exactUm, unit, context)
  const shown = `${fromUm(exactUm, unit)} ${unitLabels[unit]}`
  const sentence =
    exactUm > highest
      ? `${shown} is a very large clearance${forBore(context.boreMm)}. Was something else meant?`
      : `${shown} is thinner than any feeler blade. Was another unit meant?`
  return { kind: 'ask', valueUm: exactUm, unit, sentence, suggestions }
}

/**
 * What may have been meant with a clearance that is too large or too small, also with one that is refused: the decimal mark
 * slipped, or another unit (values in µm). R-UNIT.
 */
export function likelyMeant(valueUm: number, unit: LengthUnit, context: ClearanceContext = {}): Suggestion[] {
  const highest = thresholdUm(context.boreMm)
  return meant(valueUm, unit).filter((option) => option.valueUm >= likelyAboveUm && option.valueUm <= highest)
}

/** A clearance in µm to the nanometre; throws InputError below 0 and above 2 mm. */
export function requireClearance(valueUm: number, field: string, unit: LengthUnit = 'um'): number {
  const nm = toNanometres(valueUm, 'um')
  if (nm < 0) throw new InputError('negative', field, 'A clearance can’t be below zero: check the sign.')
  if (nm > toNanometres(largestClearanceUm, 'um')) {
    const shown = `${fromUm(valueUm, unit)} ${unitLabels[unit]}`
    throw new InputError('too-large', field, `${shown} is more than 2 mm: check the number and its unit.`)
  }
  return toUm(valueUm, 'um')
}

function thresholdUm(boreMm: number | undefined): number {
  if (boreMm === undefined) return questionedAboveUm
  const lookup = rowForBore(boreMm, 'tapered')
  return lookup.found ? Math.min(lookup.row.c5MaxUm * 1.5, largestClearanceUm) : questionedAboveUm
}

function forBore(boreMm: number | undefined): string {
  return boreMm === undefined ? '' : ` for a bore of ${boreMm} mm`
}

/** The same digits with the decimal mark one or two places to the left, and the same number in the other units. */
function meant(valueUm: number, unit: LengthUnit): Suggestion[] {
  const number = fromUm(valueUm, unit)
  const slips = [10, 100].map((by) => toUm(number / by, unit))
  const shifted = slips.map((um) => ({
    valueUm: um,
    label: formatLength(um, unit, { decimals: unit === 'mm' ? 3 : 1 }),
  }))
  const others = (['mm', 'um', 'thou'] as const).filter((other) => other !== unit)
  const swapped = others.map((other) => ({ valueUm: toUm(number, other), label: `${number} ${unitLabels[other]}` }))
  return valueUm < questionedBelowUm ? swapped : [...shifted, ...swapped]
}
