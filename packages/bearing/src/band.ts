import type { ClassRange, ClearanceClass } from '@shaftbook/standards/clearance-classes'
import { guideRowForBore } from '@shaftbook/standards/reduction-guide'
import type { ReductionGuideRow } from '@shaftbook/standards/reduction-guide.data'
import type { Lookup, Taper } from '@shaftbook/standards/table'
import { isSphericalRoller } from './designation.ts'
import { InputError, requireWithin } from './input-error.ts'
import { chartSource, rowForBearing, type ChartRow, type MakerChart } from './maker-chart.ts'
import { boreRange, certaintyCautions, noAnswer, type NoAnswer, type Source, type Sourced } from './source.ts'
import { toNanometres, umFromNanometres } from './units.ts'

/** The clearance band: the reduction in µm that a mount has to finish in. */
export interface Band extends Sourced {
  minUm: number
  maxUm: number
  /** Axial travel in mm that goes with the band, where its source gives it. */
  driveUpMm: { min: number; max: number } | null
}

/** Least mounted clearance in µm allowed for one clearance class. */
export interface ResidualMinimum extends Sourced {
  minUm: number
  clearanceClass: ClearanceClass
}

/** A position's own band and residual minimum, set by the engineer. */
export interface OwnBand {
  title?: string
  edition?: string | null
  minUm: number
  maxUm: number
}

export interface BandQuery {
  boreMm: number
  /** null for a cylindrical bore: nothing is driven up, so only a position's own band can apply. */
  taper: Taper | null
  clearanceClass: ClearanceClass
  /** Series of the bearing, such as 222: the generic guide holds for spherical roller bearings only. Left out: one is meant. */
  series?: string | null
  ownBand?: OwnBand | null
  ownResidualMinUm?: number | null
  chart?: MakerChart | null
}

const guideTitle = 'generic reduction guide'

/** The band by source in this order: position's own, maker's chart, generic guide; the source is in the result. R-RED. */
export function chooseBand(query: BandQuery): ({ found: true } & Band) | NoAnswer {
  if (query.ownBand) return band(query.ownBand, null, positionSource(query.ownBand), [])
  if (query.taper === null) {
    const reason = 'A bearing with cylindrical bore is not driven up a taper: no guide has a band for it.'
    return noAnswer(reason, guideTitle, 'R-RED')
  }
  const fromChart = chartRow(query)
  if (fromChart) {
    const { row, chart } = fromChart
    const limits = { minUm: row.reductionMinUm, maxUm: row.reductionMaxUm }
    return band(limits, pair(row.driveUpMinMm, row.driveUpMaxMm), chartSource(chart, row), [])
  }
  const guide = guideFor(query)
  if (!guide.found) return noAnswer(guide.reason, guideTitle, 'R-RED')
  const limits = { minUm: guide.row.reductionMinUm, maxUm: guide.row.reductionMaxUm }
  return band(limits, guideDriveUp(guide.row, query.taper), guideSource(guide), bandCautions(query))
}

/** The residual minimum of the class by the same order of sources. The guide has none for C2 and C5. R-RES. */
export function residualMinimum(query: BandQuery): ({ found: true } & ResidualMinimum) | NoAnswer {
  const { clearanceClass, ownResidualMinUm } = query
  if (ownResidualMinUm !== undefined && ownResidualMinUm !== null) {
    return residual(ownResidualMinUm, clearanceClass, positionSource(query.ownBand ?? null))
  }
  if (query.taper === null) {
    return noAnswer('No guide has a residual minimum for a cylindrical bore.', guideTitle, 'R-RES')
  }
  const fromChart = chartRow(query)
  const chartMinUm = fromChart?.row.residualMinUm?.[clearanceClass]
  if (fromChart && chartMinUm !== undefined && chartMinUm !== null) {
    return residual(chartMinUm, clearanceClass, chartSource(fromChart.chart, fromChart.row))
  }
  const guide = guideFor(query)
  if (!guide.found) return noAnswer(guide.reason, guideTitle, 'R-RES')
  const minUm = guideResidual(guide.row, clearanceClass)
  if (minUm === null) {
    const reason = `The guide has no residual minimum for ${clearanceClass}: the engineer gives one.`
    return noAnswer(reason, guideTitle, 'R-RES')
  }
  return residual(minUm, clearanceClass, guideSource(guide))
}

export interface HalfAdvice extends Sourced {
  half: 'lower' | 'upper' | 'either'
  aimMinUm: number
  aimMaxUm: number
}

/** Which half of the band to aim at: the half of its class in which the bench clearance lies. Advice only. R-HALF. */
export function halfOfBand(benchUm: number, range: ClassRange, wanted: Band): HalfAdvice {
  const offset = 2 * toNanometres(benchUm, 'um') - toNanometres(range.minUm, 'um') - toNanometres(range.maxUm, 'um')
  const middleUm = umFromNanometres(
    Math.round((toNanometres(wanted.minUm, 'um') + toNanometres(wanted.maxUm, 'um')) / 2),
  )
  const half = offset < 0 ? 'lower' : offset > 0 ? 'upper' : 'either'
  return {
    half,
    aimMinUm: half === 'upper' ? middleUm : wanted.minUm,
    aimMaxUm: half === 'lower' ? middleUm : wanted.maxUm,
    source: wanted.source,
    rule: 'R-HALF',
    cautions: [],
  }
}

function band(
  limits: { minUm: number; maxUm: number },
  driveUpMm: Band['driveUpMm'],
  source: Source,
  cautions: string[],
): { found: true } & Band {
  requireBand(limits)
  const all = [...certaintyCautions(source), ...cautions]
  return { found: true, minUm: limits.minUm, maxUm: limits.maxUm, driveUpMm, source, rule: 'R-RED', cautions: all }
}

/** Throws InputError unless 0 < min < max <= 2000 µm. */
export function requireBand(limits: { minUm: number; maxUm: number }): void {
  const [min, max] = [toNanometres(limits.minUm, 'um'), toNanometres(limits.maxUm, 'um')]
  if (min > 0 && min < max && max <= 2_000_000) return
  const shown = `${limits.minUm} to ${limits.maxUm} µm`
  throw new InputError(
    'conflict',
    'band',
    `A band runs from a smaller to a larger reduction, up to 2 mm; ${shown} doesn't.`,
  )
}

function residual(minUm: number, clearanceClass: ClearanceClass, source: Source): { found: true } & ResidualMinimum {
  requireWithin(minUm, 'residualMinimum', 0, 2000, 'µm')
  return { found: true, minUm, clearanceClass, source, rule: 'R-RES', cautions: certaintyCautions(source) }
}

function guideFor({ boreMm, series }: BandQuery): Lookup<ReductionGuideRow> {
  if (typeof series === 'string' && !isSphericalRoller(series)) {
    return {
      found: false,
      reason: `The generic guide is for spherical roller bearings, series ${series} is another kind.`,
    }
  }
  return guideRowForBore(boreMm)
}

function chartRow(query: BandQuery): { chart: MakerChart; row: ChartRow } | null {
  const { chart, boreMm, taper, clearanceClass } = query
  if (!chart || chart.taper !== taper) return null
  const row = rowForBearing(chart.rows, boreMm, clearanceClass)
  return row ? { chart, row } : null
}

function positionSource(own: OwnBand | null): Source {
  const title = own?.title ?? 'set for this position'
  return { kind: 'position', title, edition: own?.edition ?? null, row: null, certainty: null }
}

function guideSource(guide: Extract<Lookup<ReductionGuideRow>, { found: true }>): Source {
  const row = boreRange(guide.row)
  return { kind: 'generic-guide', title: guideTitle, edition: null, row, certainty: guide.certainty }
}

function guideDriveUp(row: ReductionGuideRow, taper: Taper): Band['driveUpMm'] {
  return taper === '1:12' ? pair(row.driveUp12MinMm, row.driveUp12MaxMm) : pair(row.driveUp30MinMm, row.driveUp30MaxMm)
}

function pair(min: number | null | undefined, max: number | null | undefined): Band['driveUpMm'] {
  return typeof min === 'number' && typeof max === 'number' ? { min, max } : null
}

function guideResidual(row: ReductionGuideRow, clearanceClass: ClearanceClass): number | null {
  const minima = { C2: null, CN: row.residualMinCnUm, C3: row.residualMinC3Um, C4: row.residualMinC4Um, C5: null }
  return minima[clearanceClass]
}

function bandCautions(query: BandQuery): string[] {
  const missed = query.chart
    ? [`${query.chart.title} has no row for this bore, taper and class: the generic guide was used.`]
    : []
  const c2 =
    query.clearanceClass === 'C2' ? ['The generic guide is not made for class C2: ask the engineer for a band.'] : []
  return [...missed, ...c2]
}
