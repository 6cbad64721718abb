import { formatLength as printLength, nanometresPer, unitLabels, type LengthUnit } from '@shaftbook/bearing/units'

export type { LengthUnit } from '@shaftbook/bearing/units'
export { parseNumber } from '@shaftbook/bearing/number-text'

/** Lengths are held in micrometres; these are the units a person may read and type them in. */
export const lengthUnits = {
  mm: { symbol: unitLabels.mm, name: 'millimetres', um: nanometresPer.mm / 1000 },
  um: { symbol: unitLabels.um, name: 'micrometres', um: nanometresPer.um / 1000 },
  in: { symbol: unitLabels.in, name: 'inches', um: nanometresPer.in / 1000 },
  thou: { symbol: unitLabels.thou, name: 'thousandths of an inch', um: nanometresPer.thou / 1000 },
} as const satisfies Record<LengthUnit, object>

export const lengthUnitKeys = Object.keys(lengthUnits) as LengthUnit[]

export function isLengthUnit(text: unknown): text is LengthUnit {
  return typeof text === 'string' && Object.hasOwn(lengthUnits, text)
}

/** A length in µm as digits in the given unit, without the symbol (rule R-UNIT: mm to 0.001, thou to 0.1). */
export function lengthDigits(um: number, unit: LengthUnit): string {
  return printLength(um, unit, { withUnit: false })
}

/** A length in µm with its symbol, such as `0.105 mm`. */
export function formatLength(um: number, unit: LengthUnit): string {
  return printLength(um, unit)
}

/** A range of lengths in µm with one symbol, such as `0.090 to 0.105 mm`. */
export function formatLengthRange(fromUm: number, toUm: number, unit: LengthUnit): string {
  return `${lengthDigits(fromUm, unit)} to ${formatLength(toUm, unit)}`
}
