// Made from csv/iso286_shaft_tolerances.csv by generate.ts. Change the table and run `npm run standards`.
import { defineTable, type Certainty } from './table.ts'

export interface ShaftToleranceRow {
  readonly overMm: number
  readonly inclMm: number
  readonly it5Um: number
  readonly it9Um: number
  readonly it10Um: number
  readonly certainty: Certainty
}

/** Standard tolerances of shafts: h9 and h10 run from nominal down by IT9 and IT10. ISO 286-1. */
export const shaftTolerancesTable = defineTable<ShaftToleranceRow>({
  title: 'Standard tolerances of shafts: h9 and h10 run from nominal down by IT9 and IT10',
  standard: 'ISO 286-1',
  edition: null,
  rows: [
    { overMm: 10, inclMm: 18, it5Um: 8, it9Um: 43, it10Um: 70, certainty: 'high' },
    { overMm: 18, inclMm: 30, it5Um: 9, it9Um: 52, it10Um: 84, certainty: 'high' },
    { overMm: 30, inclMm: 50, it5Um: 11, it9Um: 62, it10Um: 100, certainty: 'high' },
    { overMm: 50, inclMm: 80, it5Um: 13, it9Um: 74, it10Um: 120, certainty: 'high' },
    { overMm: 80, inclMm: 120, it5Um: 15, it9Um: 87, it10Um: 140, certainty: 'high' },
    { overMm: 120, inclMm: 180, it5Um: 18, it9Um: 100, it10Um: 160, certainty: 'high' },
    { overMm: 180, inclMm: 250, it5Um: 20, it9Um: 115, it10Um: 185, certainty: 'high' },
    { overMm: 250, inclMm: 315, it5Um: 23, it9Um: 130, it10Um: 210, certainty: 'high' },
    { overMm: 315, inclMm: 400, it5Um: 25, it9Um: 140, it10Um: 230, certainty: 'high' },
    { overMm: 400, inclMm: 500, it5Um: 27, it9Um: 155, it10Um: 250, certainty: 'high' },
  ],
})
