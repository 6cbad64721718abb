import { plummerBlocksTable, type PlummerBlockRow } from './plummer-blocks.data.ts'
import { lookUp, type Lookup } from './table.ts'

/** Every bearing and sleeve that the table pairs with a housing, such as SN520 (DIN 736 to 739); empty if not tabled. */
export function plummerBlocksByCode(housingCode: string): readonly PlummerBlockRow[] {
  return plummerBlocksTable.rows.filter((row) => row.housingCode === housingCode)
}

/** The row for one housing with one bearing (basic code with K where tapered): ring widths follow from both. */
export function plummerBlockFor(housingCode: string, bearingCode: string): Lookup<PlummerBlockRow> {
  return lookUp(
    plummerBlocksTable,
    (row) => row.housingCode === housingCode && row.bearingCode === bearingCode,
    `The table has no row for housing ${housingCode} with bearing ${bearingCode}; measure the housing seat.`,
  )
}
