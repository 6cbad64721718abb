import { clearanceCylindricalBore } from './clearance-cylindrical-bore.data.ts'
import { clearanceTaperedBore, type ClearanceRow } from './clearance-tapered-bore.data.ts'
import { lookUp, type Lookup, type Table } from './table.ts'

/** Radial internal clearance classes of ISO 5753-1, from small to large. CN is the normal one and is not printed. */
export const clearanceClasses = ['C2', 'CN', 'C3', 'C4', 'C5'] as const
export type ClearanceClass = (typeof clearanceClasses)[number]

export type BoreType = 'tapered' | 'cylindrical'

export interface ClassRange {
  readonly minUm: number
  readonly maxUm: number
}

/** The whole table for one kind of bore (ISO 5753-1, spherical roller bearings). */
export function clearanceTable(bore: BoreType): Table<ClearanceRow> {
  return bore === 'tapered' ? clearanceTaperedBore : clearanceCylindricalBore
}

/** Row of the clearance table whose range holds the bore: over < d <= incl. Bore in mm, 18 < d <= 1000. Rule R-CL1. */
export function rowForBore(boreMm: number, bore: BoreType): Lookup<ClearanceRow> {
  return lookUp(
    clearanceTable(bore),
    (row) => row.overMm < boreMm && boreMm <= row.inclMm,
    `The clearance table for ${bore} bores covers bores over 18 up to 1000 mm; there is no row for ${boreMm} mm.`,
  )
}

/** Least and greatest clearance of one class in a row of the table, in µm, bearing unmounted and without load. */
export function classRange(row: ClearanceRow, clearanceClass: ClearanceClass): ClassRange {
  const ranges: Record<ClearanceClass, ClassRange> = {
    C2: { minUm: row.c2MinUm, maxUm: row.c2MaxUm },
    CN: { minUm: row.cnMinUm, maxUm: row.cnMaxUm },
    C3: { minUm: row.c3MinUm, maxUm: row.c3MaxUm },
    C4: { minUm: row.c4MinUm, maxUm: row.c4MaxUm },
    C5: { minUm: row.c5MinUm, maxUm: row.c5MaxUm },
  }
  return ranges[clearanceClass]
}
