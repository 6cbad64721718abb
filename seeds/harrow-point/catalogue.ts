import { chooseBand, residualMinimum } from '@shaftbook/bearing/band'
import {
  aGrease,
  aMakerChart,
  aMakerChartBand,
  type GreaseRow,
  type MakerChartBandRow,
  type MakerChartRow,
} from '../builders/catalogue-rows.ts'
import type { Random } from '../random.ts'
import type { AreaSpec } from './layout.ts'

export interface Catalogue {
  greases: Record<AreaSpec['grease'], GreaseRow>
  charts: { tarnbeck: MakerChartRow; lindmoor: MakerChartRow }
  chartRows: MakerChartBandRow[]
}

/** Invented greases and the reduction charts of two invented bearing makers. */
export function makeCatalogue(siteId: string, random: Random, since: Date): Catalogue {
  const id = (): string => random.uuidAt(since)
  const tarnbeck = { maker: 'Tarnbeck', document: 'Mounting on sleeves, sheet M4', edition: '3', page: '2' }
  const lindmoor = { maker: 'Lindmoor', document: 'Fitting card 12', edition: '2nd print', page: null }
  const charts = {
    tarnbeck: aMakerChart({ siteId, id: id(), ...tarnbeck }),
    lindmoor: aMakerChart({ siteId, id: id(), ...lindmoor }),
  }
  return {
    greases: {
      'Marl EP 2': aGrease({ siteId, id: id(), name: 'Marl EP 2' }),
      'Marl HT 2': aGrease({
        siteId,
        id: id(),
        name: 'Marl HT 2',
        thickener: 'polyureaShearStable',
        baseOilViscosity40cMm2s: 150,
        code: 'KP2R-20',
      }),
      'Skerry WR 2': aGrease({
        siteId,
        id: id(),
        name: 'Skerry WR 2',
        thickener: 'calciumSulfonate',
        baseOilViscosity40cMm2s: 460,
        code: 'KP2N-20',
      }),
    },
    charts,
    chartRows: [...chartRows(charts.tarnbeck, 5, id), ...chartRows(charts.lindmoor, -5, id)],
  }
}

const boreRanges = [
  [80, 100],
  [100, 120],
  [120, 140],
  [140, 160],
  [160, 180],
] as const

/** A chart whose bands lie a little above or below those of the generic guide. */
function chartRows(chart: MakerChartRow, byUm: number, id: () => string): MakerChartBandRow[] {
  return boreRanges.map(([overMm, inclMm]) => {
    const band = chooseBand({ boreMm: inclMm, taper: '1:12', clearanceClass: 'C3' })
    if (!band.found) throw new Error(band.reason)
    const residualNm = (clearanceClass: 'CN' | 'C3' | 'C4'): number => {
      const minimum = residualMinimum({ boreMm: inclMm, taper: '1:12', clearanceClass })
      if (!minimum.found) throw new Error(minimum.reason)
      return minimum.minUm * 1000
    }
    return aMakerChartBand({
      siteId: chart.siteId,
      id: id(),
      chartId: chart.id,
      overMm,
      inclMm,
      reductionMinNm: (band.minUm + byUm) * 1000,
      reductionMaxNm: (band.maxUm + byUm) * 1000,
      residualMinCnNm: residualNm('CN'),
      residualMinC3Nm: residualNm('C3'),
      residualMinC4Nm: residualNm('C4'),
      driveUpMinMm: band.driveUpMm?.min ?? null,
      driveUpMaxMm: band.driveUpMm?.max ?? null,
    })
  })
}
