import type { BandVerdict } from '@shaftbook/bearing/acceptance'
import { judgeMount, type MountJudgement } from '@shaftbook/bearing/mount'
import { bearingReading, type RowReading } from '@shaftbook/bearing/readings'
import type { VerdictSettings } from '@shaftbook/bearing/verdict'
import type { GaugeInput } from '../../ui/clearance-gauge-geometry.ts'
import type { BearingType, PlaceLimits } from './band-of-place.ts'
import { numberOf } from './sheet-numbers.ts'
import { isOpenQuestion, typedReadings, type ReadReading } from './sheet-readings.ts'
import type { Moment, Sheet } from './sheet.ts'

/** What the typed readings say so far. */
export interface SheetJudgement {
  readings: ReadReading[]
  gauge: GaugeInput
  /** Whole once both rows were read before and after, and nothing is left to ask. */
  result: MountJudgement | null
  openQuestions: number
  /** The verdict as it would be signed now; null where nothing is judged, or not all is read. */
  verdict: BandVerdict | null
  /** The verdict calls for a reason before the record can be signed. */
  needsReason: boolean
}

/** Judges a sheet as it stands, by the formulas that the service uses too. */
export function judgeSheet(
  sheet: Sheet,
  type: BearingType,
  limits: PlaceLimits,
  settings: Partial<VerdictSettings>,
): SheetJudgement {
  const readings = typedReadings(sheet, type.boreMm)
  const bench = rowReadings(readings, 'bench')
  const mounted = rowReadings(readings, 'mounted')
  const openQuestions = readings.filter(isOpenQuestion).length
  const refused = readings.some(({ answer }) => answer.kind === 'refused')
  const judged =
    limits.band && openQuestions === 0 && !refused
      ? judgeMount({
          bearing: { boreMm: type.boreMm, taper: type.taper, clearanceClass: type.clearanceClass },
          before: bench,
          after: mounted,
          band: limits.band,
          residualMinimum: limits.residual,
          driveUpMm: numberOf(sheet, 'driveUpMm'),
          settings,
        })
      : null
  const result = judged?.kind === 'judged' ? judged : null
  const bothRead = bothRowsMean(bench) !== null && bothRowsMean(mounted) !== null
  const unproven = limits.judged && (sheet.method === 'drive-up' || (sheet.method === 'feeler' && bothRead))
  const verdict = result?.reduction.verdict ?? (unproven && openQuestions === 0 ? 'not-proven' : null)
  return {
    readings,
    gauge: {
      benchUm: bothRowsMean(bench),
      bandUm: limits.band && { minUm: limits.band.minUm, maxUm: limits.band.maxUm },
      classUm: limits.classUm,
      residualMinUm: limits.residual?.minUm ?? null,
      readings: mounted,
      meanUm: bothRowsMean(mounted) ?? oneRowMean(mounted),
    },
    result,
    openQuestions,
    verdict,
    needsReason: (verdict !== null && verdict !== 'inside') || (result !== null && isShort(result)),
  }
}

function isShort({ residual }: MountJudgement): boolean {
  return residual.verdict === 'too-small' || residual.verdict === 'not-proven'
}

function rowReadings(readings: readonly ReadReading[], moment: Moment): RowReading[] {
  return readings.flatMap(({ moment: at, row, answer }) =>
    at === moment && answer.kind !== 'refused' ? [{ row, um: answer.valueUm }] : [],
  )
}

function bothRowsMean(readings: readonly RowReading[]): number | null {
  const read = bearingReading(readings)
  return read.kind === 'reading' ? read.reading.meanUm : null
}

/** The mean of the one row that was read, for the gauge to show the way: the row stands for both. */
function oneRowMean(readings: readonly RowReading[]): number | null {
  return bothRowsMean(
    readings.flatMap(({ um }) => [
      { row: 'A' as const, um },
      { row: 'B' as const, um },
    ]),
  )
}
