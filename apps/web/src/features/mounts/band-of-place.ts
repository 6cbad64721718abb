import { chooseBand, residualMinimum, type Band, type BandQuery, type ResidualMinimum } from '@shaftbook/bearing/band'
import { clearanceRange } from '@shaftbook/bearing/clearance'
import { InputError } from '@shaftbook/bearing/input-error'
import type { MakerChart } from '@shaftbook/contract/maker-charts'
import type { PositionOverview } from '@shaftbook/contract/position-views'

const noGuide =
  'The generic guide is made for spherical roller bearings: this one goes by feel, or by a band that the engineer gives the position.'

type Position = PositionOverview['position']
export type BearingType = PositionOverview['bearingType']

/** What the gauge measures against, each with its source; where there is none, the sentence why. */
export interface PlaceLimits {
  band: Band | null
  noBand: string | null
  residual: ResidualMinimum | null
  classUm: { minUm: number; maxUm: number } | null
  /** A mount here is judged by numbers: the bearing sits on a taper whose band is known, or ought to be. */
  judged: boolean
}

/** Band, residual minimum and class range of a bearing type at a position. R-RED, R-RES, R-CL1. */
export function limitsAt(position: Position, type: BearingType, chart: MakerChart | null): PlaceLimits {
  const query = bandQuery(position, type, chart)
  const range = clearanceRange(type.boreMm, type.taper === null ? 'cylindrical' : 'tapered', type.clearanceClass)
  const classUm = range.found ? range.range : null
  try {
    const band = chooseBand(query)
    const residual = residualMinimum(query)
    return {
      band: band.found ? band : null,
      noBand: band.found ? null : query.taper === null && type.taper !== null ? noGuide : band.reason,
      residual: residual.found ? residual : null,
      classUm,
      judged: band.found || query.taper !== null,
    }
  } catch (error) {
    if (error instanceof InputError) return { band: null, noBand: error.message, residual: null, classUm, judged: true }
    throw error
  }
}

function bandQuery(position: Position, type: BearingType, chart: MakerChart | null): BandQuery {
  const { ownReductionMinUm: minUm, ownReductionMaxUm: maxUm, ownBandSource } = position
  const ownChart = chart && type.taper ? chartFor(chart, type.taper) : null
  const inChart = ownChart?.rows.some(({ overMm, inclMm }) => overMm < type.boreMm && type.boreMm <= inclMm) ?? false
  // The guide is made for spherical roller bearings: any other goes by the position's own band or a chart only.
  const driven = position.seat !== 'cylindrical' && (type.kind === 'spherical-roller' || inChart)
  return {
    boreMm: type.boreMm,
    taper: driven ? type.taper : null,
    clearanceClass: type.clearanceClass,
    ownBand: minUm === null || maxUm === null ? null : { minUm, maxUm, ...(ownBandSource && { title: ownBandSource }) },
    ownResidualMinUm: position.ownResidualMinUm,
    chart: ownChart,
  }
}

function chartFor(chart: MakerChart, taper: '1:12' | '1:30'): NonNullable<BandQuery['chart']> {
  return {
    title: `${chart.maker}, ${chart.document}`,
    edition: chart.edition,
    taper,
    rows: chart.rows
      .filter((row) => row.taper === taper)
      .map((row) => ({
        ...row,
        residualMinUm: { CN: row.residualMinCnUm, C3: row.residualMinC3Um, C4: row.residualMinC4Um },
      })),
  }
}
