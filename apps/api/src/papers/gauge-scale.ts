/** What the gauge of a record is drawn from: radial clearances in µm. */
export interface GaugeFigures {
  readonly benchUm: number | null
  /** Wanted reduction. */
  readonly bandUm: { readonly minUm: number; readonly maxUm: number } | null
  readonly classUm: { readonly minUm: number; readonly maxUm: number } | null
  readonly residualMinUm: number | null
  /** Mounted clearances in the order in which they were taken. */
  readonly readings: readonly { readonly row: 'A' | 'B'; readonly um: number }[]
  readonly meanUm: number | null
}

export interface GaugeScale {
  readonly lowUm: number
  readonly highUm: number
  /** Round steps inside the scale, µm. */
  readonly ticksUm: readonly number[]
}

/** Mounted clearances that finish inside the band: bench less band maximum to bench less band minimum, µm. R-RED. */
export function clearanceWindow(
  benchUm: number | null,
  bandUm: GaugeFigures['bandUm'],
): { readonly fromUm: number; readonly toUm: number } | null {
  return benchUm === null || bandUm === null ? null : { fromUm: benchUm - bandUm.maxUm, toUm: benchUm - bandUm.minUm }
}

/** The scale that holds all that is fixed; a reading widens it by half at most and is marked as off the scale beyond. */
export function gaugeScale(figures: GaugeFigures): GaugeScale {
  const window = clearanceWindow(figures.benchUm, figures.bandUm)
  const { classUm, benchUm, residualMinUm, meanUm, readings } = figures
  const fixed = known([benchUm, window?.fromUm, window?.toUm, classUm?.minUm, classUm?.maxUm, residualMinUm])
  const taken = known([...readings.map(({ um }) => um), meanUm])
  const anchors = fixed.length > 0 ? fixed : taken
  if (anchors.length === 0) return { lowUm: 0, highUm: 200, ticksUm: ticks(0, 200) }
  const [low, high] = [Math.min(...anchors), Math.max(...anchors)]
  const room = Math.max(high - low, 40) / 2
  const near = taken.filter((um) => um >= low - room && um <= high + room)
  const lowUm = Math.min(low, ...near) - room / 4
  const highUm = Math.max(high, ...near) + room / 4
  return { lowUm, highUm, ticksUm: ticks(lowUm, highUm) }
}

function known(values: readonly (number | null | undefined)[]): number[] {
  return values.filter((value): value is number => typeof value === 'number')
}

function ticks(lowUm: number, highUm: number): number[] {
  const step = [1, 2, 5, 10, 20, 50, 100, 200, 500].find((size) => (highUm - lowUm) / size <= 9) ?? 1000
  const first = Math.ceil(lowUm / step)
  const last = Math.floor(highUm / step)
  return Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step)
}

/** Moves places in rising order apart until they are `gap` from one another, between `low` and `high` where there is room. */
export function spreadOut(places: readonly number[], gap: number, low: number, high: number): number[] {
  const spread: number[] = []
  for (const place of places) spread.push(Math.max(place, (spread.at(-1) ?? low - gap) + gap))
  let limit = high
  for (let index = spread.length - 1; index >= 0; index -= 1) {
    spread[index] = Math.min(spread[index]!, limit)
    limit = spread[index]! - gap
  }
  return spread
}
