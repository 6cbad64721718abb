/**
 * Moves labels or marks along a line apart so that none overlap, keeping their order and staying between `low` and `high`
 * where there is room. Takes and returns places in rising order.
 */
export function spreadLabels(places: readonly number[], gap: number, low: number, high: number): number[] {
  const placed: number[] = []
  for (const place of places) placed.push(Math.max(place, placed.length ? placed[placed.length - 1]! + gap : low))
  let limit = high
  for (let i = placed.length - 1; i >= 0; i -= 1) {
    placed[i] = Math.min(placed[i]!, limit)
    limit = placed[i]! - gap
  }
  return placed
}
