/** A figure beside its budget. */
export interface Figure {
  readonly what: string
  readonly value: number
  /** The most that is allowed; absent where the figure only explains another. */
  readonly budget?: number
  readonly unit: 'ms' | 'kB'
}

/** @param values at least one */
export function median(values: readonly number[]): number {
  return quantile(values, 0.5)
}

/**
 * The smallest value that at least this share of the values does not exceed.
 * @param values at least one
 * @param share 0 to 1
 */
export function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b)
  const value = sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)]
  if (value === undefined) throw new Error('There are no values.')
  return value
}

export function isMissed({ value, budget }: Figure): boolean {
  return budget !== undefined && value > budget
}

/** One line for a figure: what, how much, its budget, and whether it is kept. */
export function figureLine(figure: Figure): string {
  const { what, value, budget, unit } = figure
  const amount = (number: number): string => `${number.toFixed(unit === 'kB' ? 1 : 0)} ${unit}`
  const limit = budget === undefined ? '' : `at most ${amount(budget)}`
  const mark = budget === undefined ? '' : isMissed(figure) ? 'MISSED' : 'kept'
  return `${what.padEnd(64)}${amount(value).padStart(11)}  ${limit.padEnd(18)}${mark}`.trimEnd()
}
