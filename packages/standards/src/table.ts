/** How sure a row is: high = confirmed by a second source or strong arithmetic, low = count or measure before use. */
export type Certainty = 'high' | 'medium-high' | 'medium' | 'low'

export const certainties: readonly Certainty[] = Object.freeze(['high', 'medium-high', 'medium', 'low'])

/** Taper of a bore, diameter over length: 1:12 for suffix K, 1:30 for suffix K30. */
export type Taper = '1:12' | '1:30'

export interface Table<Row> {
  readonly title: string
  readonly standard: string
  /** Edition of the standard where it is known. */
  readonly edition: string | null
  readonly rows: readonly Readonly<Row>[]
}

/** A row of a table with what a person has to be told beside it, or the sentence why there is none. */
export type Lookup<Row> =
  | {
      readonly found: true
      readonly row: Row
      readonly standard: string
      readonly edition: string | null
      readonly certainty: Certainty
    }
  | NoRow

export interface NoRow {
  readonly found: false
  readonly reason: string
}

/** Freezes a table and each of its rows. */
export function defineTable<Row extends object>(table: Table<Row>): Table<Row> {
  for (const row of table.rows) Object.freeze(row)
  Object.freeze(table.rows)
  return Object.freeze(table)
}

/** The first row that fits, with the table's standard and edition; else the reason as a sentence. */
export function lookUp<Row extends { readonly certainty: Certainty }>(
  table: Table<Row>,
  fits: (row: Row) => boolean,
  reason: string,
): Lookup<Row> {
  const row = table.rows.find(fits)
  if (!row) return { found: false, reason }
  return { found: true, row, standard: table.standard, edition: table.edition, certainty: row.certainty }
}
