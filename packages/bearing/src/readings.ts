import { requireClearance } from './clearance-text.ts'
import { InputError } from './input-error.ts'
import { formula, type Sourced } from './source.ts'
import { formatLength, toNanometres, umFromNanometres } from './units.ts'

export const rows = ['A', 'B'] as const
export type Row = (typeof rows)[number]

/** One feeler reading in a row of rollers, in µm (0 to 2000). */
export interface RowReading {
  row: Row
  um: number
}

export interface BearingReading extends Sourced {
  /** Mean of the two row means, so that each row weighs the same (R-MEAN). To the nanometre. */
  meanUm: number
  rowMeansUm: Record<Row, number>
  rowCounts: Record<Row, number>
  rowDifferenceUm: number
  /** Greatest difference of the row means that agrees (R-ROW). */
  rowDifferenceLimitUm: number
  rowsAgree: boolean
}

export interface RowMissing extends Sourced {
  kind: 'refused'
  code: 'row-missing'
  field: string
  row: Row
  sentence: string
}

/**
 * Clearance of a double-row bearing from its readings: mean of the row means (R-MEAN), with the check that the rows agree
 * (R-ROW: difference within 10 µm or 15 % of the mean, whichever is more). Without a reading in each row it is refused.
 * Throws InputError for a reading below 0 or above 2 mm.
 */
export function bearingReading(
  readings: readonly RowReading[],
  field = 'readings',
): { kind: 'reading'; reading: BearingReading } | RowMissing {
  const byRow = { A: nanometres(readings, 'A', field), B: nanometres(readings, 'B', field) }
  const missing = rows.find((row) => byRow[row].length === 0)
  if (missing) return rowMissing(missing, field)
  const sums = { A: sum(byRow.A) / byRow.A.length, B: sum(byRow.B) / byRow.B.length }
  const means = { A: Math.round(sums.A), B: Math.round(sums.B) }
  const differenceNm = Math.abs(means.A - means.B)
  const limitNm = Math.max(10_000, Math.round((means.A + means.B) * 0.075))
  const rowsAgree = differenceNm <= limitNm
  const reading: BearingReading = {
    meanUm: umFromNanometres(Math.round((sums.A + sums.B) / 2)),
    rowMeansUm: { A: umFromNanometres(means.A), B: umFromNanometres(means.B) },
    rowCounts: { A: byRow.A.length, B: byRow.B.length },
    rowDifferenceUm: umFromNanometres(differenceNm),
    rowDifferenceLimitUm: umFromNanometres(limitNm),
    rowsAgree,
    source: formula('mean of the two row means'),
    rule: 'R-MEAN, R-ROW',
    cautions: rowsAgree ? [] : [rowsDiffer(umFromNanometres(differenceNm), umFromNanometres(limitNm))],
  }
  return { kind: 'reading', reading }
}

export interface SaggingReading extends Sourced {
  readingUm: number
}

/**
 * Clearance of a big bearing whose ring sags, in µm: (left + right + bottom) / 2, left and right felt at 3 and 9 o'clock
 * and bottom at 6 o'clock of the free ring on its inner ring. Compare only with a reading taken the same way. R-OVAL.
 */
export function saggingRingReading(leftUm: number, rightUm: number, bottomUm: number): SaggingReading {
  const places = [
    requireClearance(leftUm, 'leftUm'),
    requireClearance(rightUm, 'rightUm'),
    requireClearance(bottomUm, 'bottomUm'),
  ]
  return {
    readingUm: umFromNanometres(Math.round(sum(places.map((um) => toNanometres(um, 'um'))) / 2)),
    source: formula('(left + right + bottom) / 2'),
    rule: 'R-OVAL',
    cautions: ['Compare it only with a reading that was taken the same way.'],
  }
}

/** Outside diameter in mm above which a free ring is taken to sag (rule of thumb). R-OVAL. */
export const saggingAboveOutsideDiameterMm = 400

function nanometres(readings: readonly RowReading[], row: Row, field: string): number[] {
  return readings.flatMap((reading, index) => {
    if (!rows.includes(reading.row)) throw new InputError('malformed', `${field}[${index}].row`, 'A row is A or B.')
    if (reading.row !== row) return []
    return [toNanometres(requireClearance(reading.um, `${field}[${index}].um`), 'um')]
  })
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}

function rowMissing(row: Row, field: string): RowMissing {
  const sentence = `There is no ${field} reading in row ${row}: feel both rows, one row alone proves nothing.`
  const sourced = { source: formula('mean of the two row means'), rule: 'R-MEAN', cautions: [] }
  return { kind: 'refused', code: 'row-missing', field, row, sentence, ...sourced }
}

function rowsDiffer(differenceUm: number, limitUm: number): string {
  const shown = `${formatLength(differenceUm, 'um')}, more than ${formatLength(limitUm, 'um')}`
  return `The two rows differ by ${shown}: turn the ring so that the rollers seat, and read again.`
}
