import { ratingLifeTable, type RatingLifeRow } from './rating-life.data.ts'
import { lookUp, type Lookup } from './table.ts'

/** One factor of the modified rating life by table, key and attribute, such as a1_reliability, 95, a1 (ISO 281:2007). */
export function ratingLifeFactor(table: string, key: string, attribute: string): Lookup<RatingLifeRow> {
  return lookUp(
    ratingLifeTable,
    (row) => row.table === table && row.key === key && row.attribute === attribute,
    `The rating life tables have no ${attribute} for ${key} in ${table}.`,
  )
}
