import type { MakerChartRow } from '@shaftbook/contract/maker-charts'
import { lengthUnits, type LengthUnit } from '../../lib/length-units.ts'
import { chartColumns, exactText } from './chart-rows.ts'

/** The rows of a chart as a table for a spreadsheet: tabs between the cells, every clearance to the nanometre. */
export function chartTableText(rows: readonly Omit<MakerChartRow, 'id'>[], unit: LengthUnit): string {
  const headings = chartColumns.map(
    ({ header, kind }) => `${header}, ${kind === 'mm' ? 'mm' : lengthUnits[unit].symbol}`,
  )
  const lines = rows.map((row) => [
    row.taper,
    row.clearanceClass ?? 'all',
    ...chartColumns.map(({ name, kind }) => {
      const value = row[name]
      return value === null ? '' : kind === 'clearance' ? exactText(value, unit) : String(value)
    }),
  ])
  return [['Taper', 'Class', ...headings], ...lines].map((cells) => `${cells.join('\t')}\n`).join('')
}
