import { reductionGuideTable, type ReductionGuideRow } from './reduction-guide.data.ts'
import { lookUp, type Lookup } from './table.ts'

/**
 * Row of the generic reduction guide whose range holds the bore: over < d <= incl. Trade practice, not a standard:
 * spherical roller bearings on solid steel shafts, bore in mm, 24 < d <= 1000.
 */
export function guideRowForBore(boreMm: number): Lookup<ReductionGuideRow> {
  return lookUp(
    reductionGuideTable,
    (row) => row.overMm < boreMm && boreMm <= row.inclMm,
    `The generic reduction guide covers bores over 24 up to 1000 mm; there is no row for ${boreMm} mm.`,
  )
}
