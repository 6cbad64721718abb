/** SQL that joins how a greasing of an alias met its window, as `windowed`: kept beside the signed record. */
export function joinWindow(greasing: string): string {
  return `join greasing_window windowed on windowed.site_id = ${greasing}.site_id and windowed.id = ${greasing}.id`
}
