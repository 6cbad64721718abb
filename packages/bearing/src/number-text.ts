/** A typed decimal number in its parts, so that it can be read exactly. */
export interface DecimalParts {
  negative: boolean
  whole: string
  decimals: string
  /** What stands behind it, such as a unit. */
  rest: string
}

/** Splits a typed number: a sign, digits with at most one comma or point, and what stands behind. null where it is none. R-UNIT. */
export function splitDecimal(text: string): DecimalParts | null {
  const match = /^([+\-−]?)(\d*)(?:[.,](\d*))?\s*(\D*)$/u.exec(text.trim())
  if (!match) return null
  const [, sign = '', whole = '', decimals = '', rest = ''] = match
  return whole + decimals === '' ? null : { negative: sign === '-' || sign === '−', whole, decimals, rest }
}

/**
 * The number a person typed, with comma or point as decimal mark; undefined where it is not one number. A text with both
 * marks ("1.234,5") is refused rather than guessed. R-UNIT.
 */
export function parseNumber(text: string): number | undefined {
  const parts = splitDecimal(text)
  if (!parts || parts.rest !== '') return undefined
  const size = Number(`${parts.whole}.${parts.decimals}`)
  return Number.isFinite(size) ? (parts.negative ? -size : size) : undefined
}
