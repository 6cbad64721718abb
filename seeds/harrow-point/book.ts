import type { BearingRow, FitmentRow, MountReadingRow, MountRecordRow, RemovalRow } from '../builders/record-rows.ts'
import type { GreasingRow } from '../builders/position-rows.ts'
import type { FitmentRecords, MountSigning } from '../builders/sign-rows.ts'
import type { MeterReadingRow } from '../builders/site-rows.ts'

/** Everything that the simulation writes down. */
export interface Book {
  bearings: BearingRow[]
  fitments: FitmentRow[]
  mountRecords: MountRecordRow[]
  mountReadings: MountReadingRow[]
  signings: MountSigning[]
  removals: RemovalRow[]
  fitmentRecords: FitmentRecords[]
  greasings: GreasingRow[]
  meterReadings: MeterReadingRow[]
}

export function emptyBook(): Book {
  return {
    bearings: [],
    fitments: [],
    mountRecords: [],
    mountReadings: [],
    signings: [],
    removals: [],
    fitmentRecords: [],
    greasings: [],
    meterReadings: [],
  }
}
