import { srbDimensionsTable, type SrbDimensionsRow } from './srb-dimensions.data.ts'
import { lookUp, type Lookup } from './table.ts'

/** Boundary dimensions of a spherical roller bearing by basic code, such as 22220 (ISO 15). */
export function srbByBasicCode(basicCode: string): Lookup<SrbDimensionsRow> {
  return lookUp(
    srbDimensionsTable,
    (row) => row.basicCode === basicCode,
    `There is no row for ${basicCode} among the spherical roller bearings of the table; enter its dimensions by hand.`,
  )
}
