import { bearingReading, type RowReading } from '@shaftbook/bearing/readings'
import type { SiteSettings } from '@shaftbook/contract/access'
import { judgementOf, needsReason, rowReadings } from '@shaftbook/contract/judge-mount'
import type { Judgement } from '@shaftbook/contract/judgement'
import type { GaugeInput } from '../../ui/clearance-gauge-geometry.ts'
import type { BearingType, PlaceLimits } from './band-of-place.ts'
import { numberOf } from './sheet-numbers.ts'
import { isOpenQuestion, typedReadings, type ReadReading } from './sheet-readings.ts'
import type { Sheet } from './sheet.ts'

/** What the typed readings say so far. */
export interface SheetJudgement {
  readings: ReadReading[]
  gauge: GaugeInput
  /** As it would be signed now; null while a reading cannot be read, or may mean something else. */
  judgement: Judgement | null
  openQuestions: number
  /** The judgement calls for a reason before the record can be signed. */
  needsReason: boolean
}

/** Judges a sheet as it stands, by the rules that the service judges it by too. */
export function judgeSheet(
  sheet: Sheet,
  type: BearingType,
  limits: PlaceLimits,
  settings: SiteSettings,
): SheetJudgement {
  const readings = typedReadings(sheet, type.boreMm)
  const taken = readings.flatMap(({ moment, row, answer, struck }) =>
    answer.kind === 'refused' ? [] : [{ moment, row, clearanceUm: answer.valueUm, struck }],
  )
  const openQuestions = readings.filter(isOpenQuestion).length
  const clear = openQuestions === 0 && taken.length === readings.length
  const driveUpMm = numberOf(sheet, 'driveUpMm')
  const soFar = judgementOf({
    method: sheet.method,
    bearing: type,
    bands: limits,
    readings: taken,
    driveUpMm,
    settings,
  })
  const mounted = rowReadings(taken, 'mounted')
  return {
    readings,
    gauge: {
      benchUm: soFar.benchMeanUm,
      bandUm: limits.band && { minUm: limits.band.minUm, maxUm: limits.band.maxUm },
      classUm: limits.classUm,
      residualMinUm: limits.residualMinimum?.minUm ?? null,
      readings: mounted,
      meanUm: soFar.mountedMeanUm ?? oneRowMean(mounted),
    },
    judgement: clear ? soFar : null,
    openQuestions,
    needsReason: clear && needsReason(soFar),
  }
}

/** The mean of the one row that was read, for the gauge to show the way: the row stands for both. */
function oneRowMean(readings: readonly RowReading[]): number | null {
  const both = readings.flatMap(({ um }) => [
    { row: 'A' as const, um },
    { row: 'B' as const, um },
  ])
  const read = bearingReading(both)
  return read.kind === 'reading' ? read.reading.meanUm : null
}
