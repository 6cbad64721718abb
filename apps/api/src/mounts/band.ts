import {
  chooseBand,
  residualMinimum,
  type Band,
  type BandQuery,
  type MakerChart,
  type ResidualMinimum,
} from '@shaftbook/bearing/band'
import type { Band as BandShown, MountRecord } from '@shaftbook/contract/mounts'
import { umFromNm } from '../db/units.ts'

type Taper = MountRecord['bearing']['taper']
type ClearanceClass = NonNullable<MountRecord['clearanceClass']>

/** What the register says of a bearing type that a band hangs on. */
export interface BandBearing {
  readonly kind: string
  readonly series: string
  readonly boreMm: number
  readonly taper: Taper
  readonly clearanceClass: ClearanceClass
}

/** What the register says of a position that a band hangs on; `chart` is its maker's chart with the row for the bearing. */
export interface BandPlace {
  readonly seat: string
  readonly ownReductionMinNm: number | null
  readonly ownReductionMaxNm: number | null
  readonly ownResidualMinNm: number | null
  readonly ownBandSource: string | null
  readonly chart: { readonly maker: string; readonly document: string; readonly edition: string } | null
  readonly chartRow: BandChartRow | null
}

export interface BandChartRow {
  readonly overMm: number
  readonly inclMm: number
  readonly reductionMinNm: number
  readonly reductionMaxNm: number
  readonly residualMinCnNm: number | null
  readonly residualMinC3Nm: number | null
  readonly residualMinC4Nm: number | null
}

export interface BandAnswer {
  readonly band: Band | null
  readonly residualMinimum: ResidualMinimum | null
  /** Whether a mount here is judged by numbers: a bearing on a taper whose band is known, or ought to be. */
  readonly judged: boolean
}

/** The band and residual minimum of a bearing at a position: the position's own, its maker's chart, the guide. R-RED. */
export function bandAt(place: BandPlace, bearing: BandBearing): BandAnswer {
  const query = bandQuery(place, bearing)
  const band = chooseBand(query)
  const minimum = residualMinimum(query)
  return {
    band: band.found ? band : null,
    residualMinimum: minimum.found ? minimum : null,
    judged: band.found || query.taper !== null,
  }
}

function bandQuery(place: BandPlace, bearing: BandBearing): BandQuery {
  const { boreMm, taper, clearanceClass } = bearing
  const { ownReductionMinNm, ownReductionMaxNm, ownResidualMinNm, ownBandSource } = place
  const driven = place.seat !== 'cylindrical' && (bearing.kind === 'spherical-roller' || place.chartRow !== null)
  const own =
    ownReductionMinNm === null || ownReductionMaxNm === null ? null : { min: ownReductionMinNm, max: ownReductionMaxNm }
  return {
    boreMm,
    // the guide is made for spherical roller bearings: any other goes by the position's own band or a chart only
    taper: driven ? taper : null,
    clearanceClass,
    ownBand: own && { title: ownBandSource ?? undefined, minUm: umFromNm(own.min), maxUm: umFromNm(own.max) },
    ownResidualMinUm: umFromNm(ownResidualMinNm),
    chart: taper === null ? null : chartOf(place, taper),
  }
}

function chartOf({ chart, chartRow }: BandPlace, taper: NonNullable<Taper>): MakerChart | null {
  if (!chart) return null
  const row = chartRow && {
    overMm: chartRow.overMm,
    inclMm: chartRow.inclMm,
    reductionMinUm: umFromNm(chartRow.reductionMinNm),
    reductionMaxUm: umFromNm(chartRow.reductionMaxNm),
    residualMinUm: {
      CN: umFromNm(chartRow.residualMinCnNm),
      C3: umFromNm(chartRow.residualMinC3Nm),
      C4: umFromNm(chartRow.residualMinC4Nm),
    },
  }
  return { title: `${chart.maker}, ${chart.document}`, edition: chart.edition, taper, rows: row ? [row] : [] }
}

/** A band as the contract shows it. */
export function presentBand(band: Band): BandShown {
  const { kind, title, edition, row, certainty } = band.source
  if (kind !== 'position' && kind !== 'maker-chart' && kind !== 'generic-guide') {
    throw new TypeError(`a band does not come from ${kind}`)
  }
  return { minUm: band.minUm, maxUm: band.maxUm, source: { kind, title, edition, row, certainty } }
}
