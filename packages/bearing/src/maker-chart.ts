import type { ClearanceClass } from '@shaftbook/standards/clearance-classes'
import type { Certainty, Taper } from '@shaftbook/standards/table'
import { boreRange, type Source } from './source.ts'

/** One row of a bearing maker's chart, entered by the site. */
export interface ChartRow {
  overMm: number
  inclMm: number
  /** The clearance class whose bearings the row is for; null or left out: every class without a row of its own. */
  clearanceClass?: ClearanceClass | null
  reductionMinUm: number
  reductionMaxUm: number
  driveUpMinMm?: number | null
  driveUpMaxMm?: number | null
  residualMinUm?: Partial<Record<ClearanceClass, number | null>>
  certainty?: Certainty | null
}

/** A bearing maker's chart for one taper. */
export interface MakerChart {
  title: string
  edition: string | null
  /** The page of the document on which it stands, where the site entered one. */
  page?: string | null
  taper: Taper
  rows: readonly ChartRow[]
}

/**
 * The row of a chart for a bore in mm: the one of the clearance class before the one for all classes; undefined where
 * there is neither. R-RED.
 */
export function rowForBearing<Row extends Pick<ChartRow, 'overMm' | 'inclMm' | 'clearanceClass'>>(
  rows: readonly Row[],
  boreMm: number,
  clearanceClass: ClearanceClass,
): Row | undefined {
  const ofBore = rows.filter(({ overMm, inclMm }) => overMm < boreMm && boreMm <= inclMm)
  const forAll = ofBore.find((row) => (row.clearanceClass ?? null) === null)
  return ofBore.find((row) => row.clearanceClass === clearanceClass) ?? forAll
}

/** A row of a chart as the source of a number. */
export function chartSource({ title, edition, page }: MakerChart, row: ChartRow): Source {
  const classOfRow = row.clearanceClass ? `, ${row.clearanceClass}` : ''
  const certainty = row.certainty ?? null
  return { kind: 'maker-chart', title, edition, page: page ?? null, row: boreRange(row) + classOfRow, certainty }
}
