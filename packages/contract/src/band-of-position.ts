import { chooseBand, residualMinimum, type Band, type BandQuery, type ResidualMinimum } from '@shaftbook/bearing/band'
import { rowForBearing, type MakerChart as BearingChart } from '@shaftbook/bearing/maker-chart'
import type { z } from 'zod'
import type { MakerChart, MakerChartRow } from './maker-charts.ts'
import type { Band as BandShown } from './judgement.ts'
import type { bearingTypes, positions } from './register-tables.ts'

/** What the register says of a bearing type that a band hangs on. */
export type BandBearing = Pick<
  z.output<typeof bearingTypes.Row>,
  'kind' | 'series' | 'boreMm' | 'taper' | 'clearanceClass'
>

/** What the register says of a position that a band hangs on. */
export type BandPosition = Pick<
  z.output<typeof positions.Row>,
  'seat' | 'ownReductionMinUm' | 'ownReductionMaxUm' | 'ownResidualMinUm' | 'ownBandSource'
>

/** The maker's chart that the position goes by. */
export type BandChart = Pick<MakerChart, 'maker' | 'document' | 'edition' | 'page'> & {
  readonly rows: readonly Omit<MakerChartRow, 'id'>[]
}

/** The limits that a mount is judged by, in µm, each with its source. */
export interface PositionBand {
  readonly band: Band | null
  /** The sentence that says why there is no band; null where there is one. */
  readonly noBand: string | null
  readonly residualMinimum: ResidualMinimum | null
  /** Whether a mount here is judged by numbers: a bearing on a taper whose band is known, or ought to be. */
  readonly judged: boolean
}

const noGuide =
  'The generic guide is made for spherical roller bearings: this one goes by feel, or by a band that the engineer gives the position.'

/** The band and residual minimum of a bearing at a position: the position's own, its maker's chart, the guide. R-RED, R-RES. */
export function bandOfPosition(position: BandPosition, bearing: BandBearing, chart: BandChart | null): PositionBand {
  const query = bandQuery(position, bearing, chart)
  const band = chooseBand(query)
  const minimum = residualMinimum(query)
  const beyondGuide = query.taper === null && bearing.taper !== null
  return {
    band: band.found ? band : null,
    noBand: band.found ? null : beyondGuide ? noGuide : band.reason,
    residualMinimum: minimum.found ? minimum : null,
    judged: band.found || query.taper !== null,
  }
}

function bandQuery(position: BandPosition, bearing: BandBearing, chart: BandChart | null): BandQuery {
  const { boreMm, taper, clearanceClass, kind } = bearing
  const { ownReductionMinUm: minUm, ownReductionMaxUm: maxUm, ownBandSource, ownResidualMinUm, seat } = position
  const bearingChart = chart && taper && chartFor(chart, taper)
  const inChart = bearingChart !== null && rowForBearing(bearingChart.rows, boreMm, clearanceClass) !== undefined
  // the guide is made for spherical roller bearings: any other goes by the position's own band or a chart only
  const driven = seat !== 'cylindrical' && (kind === 'spherical-roller' || inChart)
  return {
    boreMm,
    taper: driven ? taper : null,
    clearanceClass,
    ownBand: minUm === null || maxUm === null ? null : { title: ownBandSource ?? undefined, minUm, maxUm },
    ownResidualMinUm,
    chart: bearingChart,
  }
}

function chartFor({ maker, document, edition, page, rows }: BandChart, taper: '1:12' | '1:30'): BearingChart {
  return {
    title: `${maker}, ${document}`,
    edition,
    page,
    taper,
    rows: rows
      .filter((row) => row.taper === taper)
      .map(({ residualMinCnUm, residualMinC3Um, residualMinC4Um, ...row }) => ({
        ...row,
        residualMinUm: { CN: residualMinCnUm, C3: residualMinC3Um, C4: residualMinC4Um },
      })),
  }
}

/** A band as a record keeps it and as it is shown. */
export function presentBand(band: Band): BandShown {
  const { kind, title, edition, page = null, row, certainty } = band.source
  if (kind !== 'position' && kind !== 'maker-chart' && kind !== 'generic-guide') {
    throw new TypeError(`a band does not come from ${kind}`)
  }
  return { minUm: band.minUm, maxUm: band.maxUm, source: { kind, title, edition, page, row, certainty } }
}
