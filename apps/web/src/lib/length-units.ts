/** Lengths are held in micrometres; these are the units a person may read and type them in. */
export const lengthUnits = {
  mm: { symbol: 'mm', name: 'millimetres', um: 1000, decimals: 3 },
  um: { symbol: 'µm', name: 'micrometres', um: 1, decimals: 0 },
  in: { symbol: 'in', name: 'inches', um: 25_400, decimals: 4 },
  thou: { symbol: 'thou', name: 'thousandths of an inch', um: 25.4, decimals: 1 },
} as const

export type LengthUnit = keyof typeof lengthUnits

export const lengthUnitKeys = Object.keys(lengthUnits) as LengthUnit[]

export function isLengthUnit(text: unknown): text is LengthUnit {
  return typeof text === 'string' && Object.hasOwn(lengthUnits, text)
}

/** A length in µm as digits in the given unit, without the symbol (rule R-UNIT: mm to 0.001, thou to 0.1). */
export function lengthDigits(um: number, unit: LengthUnit): string {
  const { um: size, decimals } = lengthUnits[unit]
  const digits = (um / size).toFixed(decimals)
  return Number(digits) === 0 ? digits.replace('-', '') : digits.replace('-', '−')
}

/** A length in µm with its symbol, such as `0.105 mm`. */
export function formatLength(um: number, unit: LengthUnit): string {
  return `${lengthDigits(um, unit)} ${lengthUnits[unit].symbol}`
}

/** A range of lengths in µm with one symbol, such as `0.090 to 0.105 mm`. */
export function formatLengthRange(fromUm: number, toUm: number, unit: LengthUnit): string {
  return `${lengthDigits(fromUm, unit)} to ${formatLength(toUm, unit)}`
}

/**
 * The number a person typed, with comma or point as decimal sign; undefined when it is not one number.
 * A text with both signs ("1.234,5") is refused rather than guessed.
 */
export function parseNumber(text: string): number | undefined {
  const plain = text.trim().replace('−', '-').replace(',', '.')
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : undefined
}
