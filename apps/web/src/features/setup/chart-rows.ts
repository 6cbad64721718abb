import { checkChartRow } from '@shaftbook/bearing/chart-row'
import type { MakerChartRow } from '@shaftbook/contract/maker-charts'
import { v7 as newId } from 'uuid'
import { parseNumber, type LengthUnit } from '../../lib/length-units.ts'
import { readMeasure } from '../../ui/measure-text.ts'
import { exactLength } from './start-values.ts'

/** The columns of a chart in the order in which charts print them. Clearances are typed in the unit of the whole chart. */
export const chartColumns = [
  { name: 'overMm', header: 'Bore over', kind: 'mm', required: true },
  { name: 'inclMm', header: 'Up to', kind: 'mm', required: true },
  { name: 'reductionMinUm', header: 'Least reduction', kind: 'clearance', required: true },
  { name: 'reductionMaxUm', header: 'Most reduction', kind: 'clearance', required: true },
  { name: 'residualMinCnUm', header: 'Least left, CN', kind: 'clearance', required: false },
  { name: 'residualMinC3Um', header: 'Least left, C3', kind: 'clearance', required: false },
  { name: 'residualMinC4Um', header: 'Least left, C4', kind: 'clearance', required: false },
  { name: 'driveUpMinMm', header: 'Least drive-up', kind: 'mm', required: false },
  { name: 'driveUpMaxMm', header: 'Most drive-up', kind: 'mm', required: false },
] as const satisfies readonly ChartColumn[]

interface ChartColumn {
  name: Exclude<keyof MakerChartRow, 'id' | 'taper'>
  header: string
  kind: 'mm' | 'clearance'
  required: boolean
}
export type ChartField = (typeof chartColumns)[number]['name']

/** A row of the chart as typed. */
export interface TypedRow {
  readonly id: string
  readonly taper: MakerChartRow['taper']
  readonly cells: Readonly<Record<ChartField, string>>
}

const emptyCells = Object.fromEntries(chartColumns.map(({ name }) => [name, ''])) as Record<ChartField, string>

/** A new row; it goes on where the row before it ends. */
export function nextRow(before: TypedRow | undefined): TypedRow {
  return {
    id: newId(),
    taper: before?.taper ?? '1:12',
    cells: { ...emptyCells, overMm: before?.cells.inclMm ?? '' },
  }
}

/** A kept row as it is shown for changing, with clearances in µm or mm. */
export function typedRow(row: MakerChartRow, unit: 'um' | 'mm'): TypedRow {
  const cells = chartColumns.map(({ name, kind }) => {
    const value = row[name]
    if (value === null) return [name, '']
    return [name, kind === 'clearance' ? exactLength(value, unit).text : String(value)]
  })
  return { id: row.id, taper: row.taper, cells: Object.fromEntries(cells) as Record<ChartField, string> }
}

export interface ChartReading {
  readonly rows: MakerChartRow[]
  /** What is wrong, by `rows.<index>.<field>` as the service names it. */
  readonly faults: ReadonlyMap<string, string>
}

/** Reads the typed rows; `unit` is what clearances were typed in. */
export function readChartRows(typed: readonly TypedRow[], unit: LengthUnit): ChartReading {
  const faults = new Map<string, string>()
  const rows = typed.map(({ id, taper, cells }, index) => {
    const read = chartColumns.map((column) => {
      const value = readCell(cells[column.name], column.kind, unit)
      if (value === undefined) faults.set(`rows.${index}.${column.name}`, 'not one number')
      if (value === null && column.required) faults.set(`rows.${index}.${column.name}`, 'is missing')
      return [column.name, value ?? null]
    })
    return { id, taper, ...Object.fromEntries(read) } as MakerChartRow
  })
  return { rows, faults }
}

/** The number in a cell; null when it is empty, undefined when it is not one number. */
function readCell(text: string, kind: 'mm' | 'clearance', unit: LengthUnit): number | null | undefined {
  if (text.trim() === '') return null
  if (kind === 'mm') return parseNumber(text)
  const read = readMeasure({ text, unit }, unit)
  return read.kind === 'length' ? read.um : undefined
}

/** What to ask about rows that can be read but look like a slip of unit or column: a sentence a row, none where all is usual. */
export function chartQuestions(rows: readonly MakerChartRow[]): string[] {
  return rows.flatMap((row, index) => {
    // what contradicts itself is refused by the service, not asked about
    if (row.overMm >= row.inclMm || row.reductionMinUm >= row.reductionMaxUm) return []
    const { sentence, suggestions } = checkChartRow(row, row.taper)
    if (sentence === null) return []
    const meant = suggestions.map(({ label }) => label)
    return [`Row ${index + 1}: ${sentence}${meant.length > 0 ? ` Perhaps ${meant.join(' or ')}.` : ''}`]
  })
}
