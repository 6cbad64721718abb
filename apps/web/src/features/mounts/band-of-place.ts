import { chooseBand, residualMinimum, type Band, type BandQuery, type ResidualMinimum } from '@shaftbook/bearing/band'
import { clearanceRange } from '@shaftbook/bearing/clearance'
import { InputError } from '@shaftbook/bearing/input-error'
import type { MakerChart } from '@shaftbook/contract/maker-charts'
import type { PositionOverview } from '@shaftbook/contract/position-views'

type Position = PositionOverview['position']
export type BearingType = PositionOverview['bearingType']

/** What the gauge measures against, each with its source; where there is none, the sentence why. */
export interface PlaceLimits {
  band: Band | null
  noBand: string | null
  residual: ResidualMinimum | null
  classUm: { minUm: number; maxUm: number } | null
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
      noBand: band.found ? null : band.reason,
      residual: residual.found ? residual : null,
      classUm,
    }
  } catch (error) {
    if (error instanceof InputError) return { band: null, noBand: error.message, residual: null, classUm }
    throw error
  }
}

function bandQuery(position: Position, type: BearingType, chart: MakerChart | null): BandQuery {
  const { ownReductionMinUm: minUm, ownReductionMaxUm: maxUm, ownBandSource } = position
  return {
    boreMm: type.boreMm,
    taper: type.taper,
    clearanceClass: type.clearanceClass,
    ownBand: minUm === null || maxUm === null ? null : { minUm, maxUm, ...(ownBandSource && { title: ownBandSource }) },
    ownResidualMinUm: position.ownResidualMinUm,
    chart: chart && type.taper && chartFor(chart, type.taper),
  }
}

function chartFor(chart: MakerChart, taper: '1:12' | '1:30'): BandQuery['chart'] {
  return {
    title: chart.document,
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
