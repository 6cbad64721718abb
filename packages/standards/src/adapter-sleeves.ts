import { adapterSleevesTable, type AdapterSleeveRow } from './adapter-sleeves.data.ts'
import { lookUp, type Lookup } from './table.ts'

/** Adapter sleeve by code, such as H320 (ISO 2982-1 / DIN 5415). */
export function sleeveByCode(sleeveCode: string): Lookup<AdapterSleeveRow> {
  return lookUp(
    adapterSleevesTable,
    (row) => row.sleeveCode === sleeveCode,
    `There is no row for sleeve ${sleeveCode} in the table of adapter sleeves.`,
  )
}

/** The adapter sleeve that fits a spherical roller bearing with 1:12 bore, by basic code and K, such as 22220K. */
export function sleeveForSrb(codeWithK: string): Lookup<AdapterSleeveRow> {
  return lookUp(
    adapterSleevesTable,
    (row) => srbCodesOf(row).includes(codeWithK),
    `No adapter sleeve of the table lists ${codeWithK}; ask the bearing maker which sleeve it takes.`,
  )
}

/** Spherical roller bearing codes that a sleeve serves. */
export function srbCodesOf(row: AdapterSleeveRow): string[] {
  return (row.fitsSrbCodes ?? '').split(/[;\s]+/).filter(Boolean)
}
