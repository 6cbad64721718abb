/**
 * A whole number with a gap between thousands, such as `41 280`. By hand, because the browser's own way loads its tables of all
 * languages first, which a slow phone notices.
 */
export function formatCount(value: number): string {
  return String(Math.round(value)).replace(/\B(?=(\d{3})+$)/g, '\u00a0')
}
