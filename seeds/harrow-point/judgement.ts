import { toNanometres, umFromNanometres } from '@shaftbook/bearing/units'
import { SiteSettings } from '@shaftbook/contract/access'
import { bandOfPosition, type BandChart, type PositionBand } from '@shaftbook/contract/band-of-position'
import { judgementOf } from '@shaftbook/contract/judge-mount'
import type { Judgement } from '@shaftbook/contract/judgement'
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
export function bandsOf(position: PositionRow, type: BearingTypeRow, charts: Charts): PositionBand {
  const { seat, ownBandSource } = position
  const own = {
    ownReductionMinUm: um(position.ownReductionMinNm),
    ownReductionMaxUm: um(position.ownReductionMaxNm),
    ownResidualMinUm: um(position.ownResidualMinNm),
  }
  return bandOfPosition({ seat, ownBandSource, ...own }, type, chartOf(position, charts))
}

function chartOf({ makerChartId }: PositionRow, { heads, rows }: Charts): BandChart | null {
  const head = heads.find(({ id }) => id === makerChartId)
  if (!head) return null
  const inUm = rows
    .filter(({ chartId }) => chartId === head.id)
    .map((row) => ({
      ...row,
      reductionMinUm: umFromNanometres(row.reductionMinNm),
      reductionMaxUm: umFromNanometres(row.reductionMaxNm),
      residualMinCnUm: um(row.residualMinCnNm),
      residualMinC3Um: um(row.residualMinC3Nm),
      residualMinC4Um: um(row.residualMinC4Nm),
    }))
  return { ...head, rows: inUm }
}

function um(nm: number | null): number | null {
  return nm === null ? null : umFromNanometres(nm)
}

/** Judges felt readings by the service's own rules; `proven`: a reduction has to be proven to be inside. */
export function judgeFelt(type: BearingTypeRow, bands: PositionBand, measured: Measured, proven: boolean): Judgement {
  const settings = SiteSettings.parse({ reductionAcceptance: proven ? 'proven' : 'simple' })
  return judgementOf({ method: 'feeler', bearing: type, bands, ...measured, settings })
}

/** What there is to say of a bearing that was fitted by feel: nothing in numbers. */
export function judgeByFeel(type: BearingTypeRow, bands: PositionBand): Judgement {
  const settings = SiteSettings.parse({})
  return judgementOf({ method: 'by-feel', bearing: type, bands, readings: [], driveUpMm: null, settings })
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
