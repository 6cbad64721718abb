import { certainties, type Certainty } from '../src/table.ts'

type CsvRow = Record<string, string>
interface Derived {
  certainty: Certainty
  [field: string]: string | number | null
}

export interface TableSpec {
  csv: string
  /** Name of the written file, without .data.ts. */
  file: string
  rowType: string
  constant: string
  title: string
  standard: string
  edition: string | null
  /** CSV column -> field; null leaves the column out (it can be computed, or is empty). */
  fields: Record<string, string | null>
  /** Fields that stay text though they look like numbers. */
  text?: string[]
  derive?: (row: CsvRow) => Derived
}

export const confidence = { confidence: 'certainty' }

/** Columns of the tables that hold one attribute a row. */
export const longColumns = {
  key: 'key',
  attribute: 'attribute',
  value: 'value',
  unit: 'unit',
  note: 'note',
  ...confidence,
}

/** The least of several certainties as written in a table: a row is as sure as its weakest value. */
export function weakest(...given: (string | undefined)[]): Certainty {
  const ranks = given.map((text) => certainties.findIndex((certainty) => certainty === text))
  const weakestOf = certainties[Math.max(...ranks)]
  if (ranks.includes(-1) || weakestOf === undefined) throw new Error(`not a certainty: ${given.join(', ')}`)
  return weakestOf
}
