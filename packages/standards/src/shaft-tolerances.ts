import { shaftTolerancesTable, type ShaftToleranceRow } from './shaft-tolerances.data.ts'
import { lookUp, type Lookup } from './table.ts'

/** Tolerance grades for a nominal shaft diameter in mm, 10 < d <= 500 (ISO 286-1). */
export function shaftToleranceRow(nominalMm: number): Lookup<ShaftToleranceRow> {
  return lookUp(
    shaftTolerancesTable,
    (row) => row.overMm < nominalMm && nominalMm <= row.inclMm,
    `The table of shaft tolerances covers diameters over 10 up to 500 mm; there is no row for ${nominalMm} mm.`,
  )
}
