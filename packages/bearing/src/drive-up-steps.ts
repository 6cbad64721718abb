import type { ClearanceClass } from '@shaftbook/standards/clearance-classes'
import type { Taper } from '@shaftbook/standards/table'
import type { Band, ResidualMinimum } from './band.ts'
import { reductionUm } from './clearance.ts'
import { travelFromAngleMm } from './drive-up.ts'
import type { BladeStack } from './feeler-blades.ts'
import { requireWithin } from './input-error.ts'
import { bearingReading, type BearingReading, type Row, type RowReading } from './readings.ts'
import { readingUncertaintyUm, type UncertaintyBudget } from './uncertainty.ts'
import type { LengthUnit } from './units.ts'
import type { VerdictSettings } from './verdict.ts'

/** One stop of a drive-up: the readings there, and how far ring or nut have gone from the zero point. */
export interface DriveUpStep {
  /** µm, in both rows. */
  readings: readonly RowReading[]
  /** Axial travel from the zero point, 0 to 50 mm. */
  travelMm?: number | null
  /** Nut angle from the zero point in degrees: tells the travel where none was measured, by the pitch of the thread. */
  nutAngleDeg?: number | null
}

/** What a drive-up is guided by. */
export interface GuidanceInput {
  bearing: { boreMm: number; taper: Taper | null; clearanceClass: ClearanceClass; series?: string | null }
  /** Readings of the unmounted bearing, µm. */
  bench: readonly RowReading[]
  /** In the order taken. Steps without a reading are left aside, as are earlier ones with one row only. */
  steps: readonly DriveUpStep[]
  /** From chooseBand; null when no source has one. */
  band: Band | null
  /** Why there is no band, as its source says it. */
  noBand?: string | null
  /** From residualMinimum; null when no source has one. */
  residualMinimum: ResidualMinimum | null
  /** The mount is judged by feel, without feelers. */
  byFeel?: boolean
  /** Travel counts only from a zero point found by resistance; a tapered journal has no sleeve that has to close first. */
  travelTrusted?: boolean
  /** Pitch of the nut's thread in mm, where known. */
  pitchMm?: number | null
  /** The stacks that the site's blades make, from stacksOf; null without a set. */
  stacks?: readonly BladeStack[] | null
  settings?: Partial<VerdictSettings>
  /** Unit in which the sentences say lengths; µm where left out. */
  unit?: LengthUnit
}

/** One stop with both rows read. */
export interface ReadStep {
  reading: BearingReading
  /** Of the mean, and of each row's own mean, µm. Below nothing when looser than on the bench. */
  reductionUm: number
  rowReductionUm: Record<Row, number>
  /** Axial travel from the zero point in mm, as measured or by the nut's angle; null without either. */
  travelMm: number | null
  /** Standard uncertainty of the reading, µm (R-U). */
  standardUm: number
}

/**
 * The steps that were read in both rows, against the bench clearance; or the row that the newest step lacks. Throws
 * InputError for a travel, an angle or a reading outside its domain. R-MEAN, R-RED.
 */
export function readSteps(
  bench: BearingReading,
  { steps, pitchMm }: Pick<GuidanceInput, 'steps' | 'pitchMm'>,
  budget: UncertaintyBudget,
): { read: ReadStep[] } | { missing: Row } {
  const taken = steps.filter(({ readings }) => readings.length > 0)
  const read: ReadStep[] = []
  for (const [at, step] of taken.entries()) {
    const answer = bearingReading(step.readings, `steps[${at}]`)
    if (answer.kind === 'reading') read.push(readStep(bench, answer.reading, travelOf(step, pitchMm ?? null), budget))
    else if (at === taken.length - 1) return { missing: answer.row }
  }
  return { read }
}

function readStep(
  bench: BearingReading,
  reading: BearingReading,
  travelMm: number | null,
  budget: UncertaintyBudget,
): ReadStep {
  const inRow = (row: Row): number => reductionUm(bench.rowMeansUm[row], reading.rowMeansUm[row])
  return {
    reading,
    reductionUm: reductionUm(bench.meanUm, reading.meanUm),
    rowReductionUm: { A: inRow('A'), B: inRow('B') },
    travelMm,
    standardUm: readingUncertaintyUm([reading.rowCounts.A, reading.rowCounts.B], budget),
  }
}

function travelOf({ travelMm, nutAngleDeg }: DriveUpStep, pitchMm: number | null): number | null {
  if (typeof travelMm === 'number') {
    requireWithin(travelMm, 'travelMm', 0, 50, 'mm')
    return travelMm
  }
  if (typeof nutAngleDeg !== 'number') return null
  requireWithin(nutAngleDeg, 'nutAngleDeg', 0, 3600, '°')
  if (pitchMm === null) return null
  const mm = travelFromAngleMm(nutAngleDeg, pitchMm)
  return mm <= 50 ? mm : null
}
