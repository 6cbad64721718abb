import { toNanometres } from '@shaftbook/bearing/units'
import type { Judgement } from '@shaftbook/contract/mounts'
import { SiteSettings } from '@shaftbook/contract/access'
import { bandAt, type BandAnswer } from '../../apps/api/src/mounts/band.ts'
import { judge } from '../../apps/api/src/mounts/judge.ts'
import type { BearingTypeRow, MakerChartBandRow, MakerChartRow } from '../builders/catalogue-rows.ts'
import type { PositionRow } from '../builders/position-rows.ts'
import type { MountJudgementColumns } from '../builders/record-rows.ts'

export interface FeltReading {
  moment: 'bench' | 'mounted'
  row: 'A' | 'B'
  clearanceUm: number
}

export interface Measured {
  readings: readonly FeltReading[]
  driveUpMm: number
}

export interface Charts {
  heads: readonly MakerChartRow[]
  rows: readonly MakerChartBandRow[]
}

/** Band and residual minimum at a position, chosen by the service's own rules. */
export function bandsOf(position: PositionRow, type: BearingTypeRow, charts: Charts): BandAnswer {
  const chart = charts.heads.find(({ id }) => id === position.makerChartId) ?? null
  const chartRow = charts.rows.find(
    (row) =>
      row.chartId === chart?.id && row.taper === type.taper && row.overMm < type.boreMm && type.boreMm <= row.inclMm,
  )
  return bandAt({ ...position, chart, chartRow: chartRow ?? null }, type)
}

/** Judges felt readings by the service's own rules; `proven`: a reduction has to be proven to be inside. */
export function judgeFelt(type: BearingTypeRow, bands: BandAnswer, measured: Measured, proven: boolean): Judgement {
  const settings = SiteSettings.parse({ reductionAcceptance: proven ? 'proven' : 'simple' })
  return judge({ method: 'feeler', bearing: type, bands, ...measured, settings })
}

/** What there is to say of a bearing that was fitted by feel: nothing in numbers. */
export function judgeByFeel(type: BearingTypeRow, bands: BandAnswer): Judgement {
  const settings = SiteSettings.parse({})
  return judge({ method: 'by-feel', bearing: type, bands, readings: [], driveUpMm: null, settings })
}

/** A judgement as the table keeps it. */
export function judgementColumns(judgement: Judgement, type: BearingTypeRow): MountJudgementColumns {
  const nm = (um: number | null | undefined): number | null =>
    um === null || um === undefined ? null : toNanometres(um, 'um')
  return {
    clearanceClass: type.clearanceClass,
    benchMeanNm: nm(judgement.benchMeanUm),
    mountedMeanNm: nm(judgement.mountedMeanUm),
    reductionNm: nm(judgement.reductionUm),
    bandMinNm: nm(judgement.band?.minUm),
    bandMaxNm: nm(judgement.band?.maxUm),
    residualMinNm: nm(judgement.residualMinUm),
    expandedUncertaintyNm: nm(judgement.expandedUncertaintyUm),
    verdict: judgement.verdict,
    residual: judgement.residual,
    judgement,
    formulaVersion: judgement.formulaVersion,
  }
}
