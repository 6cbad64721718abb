import { inchShaftsTable, type InchShaftRow } from './inch-shafts.data.ts'

/** Inch shafts within a distance of a measured diameter, nearest first. Diameter and distance in mm. Rule R-INCH. */
export function inchShaftsNear(shaftMm: number, withinMm: number): readonly InchShaftRow[] {
  const distance = (row: InchShaftRow): number => Math.abs(row.inchShaftMm - shaftMm)
  return inchShaftsTable.rows.filter((row) => distance(row) <= withinMm).sort((a, b) => distance(a) - distance(b))
}
