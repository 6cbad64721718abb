import { boltsTable, type BoltRow } from './bolts.data.ts'
import { lookUp, type Lookup } from './table.ts'

/** Bolt by size and class, such as M16 and 8.8 (ISO 898-1), or 1/2-13 and its SAE J429 grade. */
export function boltBySize(size: string, propertyClass: string): Lookup<BoltRow> {
  return lookUp(
    boltsTable,
    (row) => row.size === size && row.propertyClass === propertyClass,
    `The bolt table has no row for ${size} in class ${propertyClass}.`,
  )
}
