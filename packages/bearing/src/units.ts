import { InputError, requireWithin } from './input-error.ts'
import { splitDecimal } from './number-text.ts'

/** Units of small lengths: millimetre, micrometre, inch, thousandth of an inch. 1 in = 25.4 mm exactly. Rule R-UNIT. */
export const lengthUnits = ['mm', 'um', 'in', 'thou'] as const
export type LengthUnit = (typeof lengthUnits)[number]

/** Whole nanometres in one unit: every unit is a whole number of them, so no conversion loses anything by itself. */
export const nanometresPer: Readonly<Record<LengthUnit, number>> = Object.freeze({
  mm: 1_000_000,
  um: 1_000,
  in: 25_400_000,
  thou: 25_400,
})

/** How each unit is printed. */
export const unitLabels: Readonly<Record<LengthUnit, string>> = Object.freeze({
  mm: 'mm',
  um: 'µm',
  in: 'in',
  thou: 'thou',
})

const typedUnits: Readonly<Record<string, LengthUnit>> = {
  mm: 'mm',
  um: 'um',
  µm: 'um',
  μm: 'um',
  micron: 'um',
  microns: 'um',
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  thou: 'thou',
  thous: 'thou',
}

const largestNm = 10_000_000_000

export interface ParsedLength {
  /** In µm, with at most 3 decimals. */
  valueUm: number
  /** The unit that was written, or else the one that was expected. */
  unit: LengthUnit
  /** The text as typed, without spaces around it. */
  typed: string
}

/** Length in whole nanometres, rounded to the nearest one. Value finite, not beyond 10 m either way. */
export function toNanometres(value: number, unit: LengthUnit): number {
  const nm = Math.round(value * nanometresPer[unit])
  requireWithin(nm / nanometresPer.mm, 'length', -largestNm / nanometresPer.mm, largestNm / nanometresPer.mm, 'mm')
  return nm === 0 ? 0 : nm
}

/** Whole nanometres as micrometres with at most 3 decimals. */
export function umFromNanometres(nm: number): number {
  return nm / nanometresPer.um
}

/** Micrometres, to the nearest nanometre, from a value in any unit of length. */
export function toUm(value: number, unit: LengthUnit): number {
  return umFromNanometres(toNanometres(value, unit))
}

/** A length in µm expressed in another unit, unrounded: for axes and prefilled fields. Use formatLength to print. */
export function fromUm(valueUm: number, unit: LengthUnit): number {
  return toNanometres(valueUm, 'um') / nanometresPer[unit]
}

/**
 * Reads a typed length: comma or point as decimal mark, spaces around it, an optional unit behind it that wins over
 * the expected one. Exact to the nanometre (nearest, halves away from zero). Throws InputError with a sentence. R-UNIT.
 */
export function parseLength(text: string, expected: LengthUnit, field = 'length'): ParsedLength {
  const typed = text.trim()
  const parts = splitDecimal(typed)
  if (!parts) throw malformed(typed, field)
  const { negative, whole, decimals, rest } = parts
  const unit = rest === '' ? expected : typedUnits[rest.toLowerCase()]
  if (!unit) {
    throw new InputError('unknown-unit', field, `"${rest}" is not a unit we know: use mm, µm, in or thou.`)
  }
  if (whole.length > 12 || decimals.length > 30) throw malformed(typed, field)
  const size = umFromNanometres(roundedNanometres(whole, decimals, unit))
  return { valueUm: toUm(negative ? -size : size, 'um'), unit, typed }
}

/** Exact decimal arithmetic, since binary fractions lose half nanometres. */
function roundedNanometres(whole: string, decimals: string, unit: LengthUnit): number {
  const scale = 10n ** BigInt(decimals.length)
  const numerator = BigInt(whole + decimals) * BigInt(nanometresPer[unit])
  return Number((2n * numerator + scale) / (2n * scale))
}

function malformed(typed: string, field: string): InputError {
  const shown = typed === '' ? 'Nothing was typed' : `"${typed}" can't be read as a length`
  return new InputError('malformed', field, `${shown}: write a number such as 0.05 or 0,05, with a unit if you like.`)
}

/** How a length is printed. Decimals default to the unit's own (mm 3, µm 0, in 4, thou 1). */
export interface LengthFormat {
  decimals?: number
  decimalMark?: '.' | ','
  withUnit?: boolean
}

const usualDecimals: Readonly<Record<LengthUnit, number>> = { mm: 3, um: 0, in: 4, thou: 1 }

/**
 * Prints a length in µm in the wanted unit: mm to 0.001, thou to 0.1, inches to 0.0001, whole µm (pass decimals: 1 for
 * a mean). Halves are rounded away from zero on whole nanometres. Rule R-UNIT.
 */
export function formatLength(valueUm: number, unit: LengthUnit, format: LengthFormat = {}): string {
  const decimals = format.decimals ?? usualDecimals[unit]
  requireWithin(decimals, 'decimals', 0, 6, 'digits')
  const nm = toNanometres(valueUm, 'um')
  const scale = 10n ** BigInt(decimals)
  const per = BigInt(nanometresPer[unit])
  const units = (2n * BigInt(Math.abs(nm)) * scale + per) / (2n * per)
  const digits = units.toString().padStart(decimals + 1, '0')
  const at = digits.length - decimals
  const number = decimals === 0 ? digits : `${digits.slice(0, at)}${format.decimalMark ?? '.'}${digits.slice(at)}`
  const signed = nm < 0 && units > 0n ? `−${number}` : number
  return format.withUnit === false ? signed : `${signed} ${unitLabels[unit]}`
}
