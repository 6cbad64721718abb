/** A whole number with a gap between thousands, such as `41 280`. */
export function formatCount(value: number): string {
  return Math.round(value).toLocaleString('en-GB').replaceAll(',', '\u00a0')
}
