import { checkChartRow } from '@shaftbook/bearing/chart-row'
import { InputError } from '@shaftbook/bearing/input-error'
import { nanometresPer, toNanometres } from '@shaftbook/bearing/units'
import type { MakerChartRow } from '@shaftbook/contract/maker-charts'
import { v7 as newId } from 'uuid'
import { parseNumber, type LengthUnit } from '../../lib/length-units.ts'
import { readMeasure } from '../../ui/measure-text.ts'

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
  name: Exclude<keyof MakerChartRow, 'id' | 'taper' | 'clearanceClass'>
  header: string
  kind: 'mm' | 'clearance'
  required: boolean
}
export type ChartField = (typeof chartColumns)[number]['name']

/** A row of the chart as typed. */
export interface TypedRow {
  readonly id: string
  readonly taper: MakerChartRow['taper']
  readonly clearanceClass: MakerChartRow['clearanceClass']
  readonly cells: Readonly<Record<ChartField, string>>
}

const emptyCells = Object.fromEntries(chartColumns.map(({ name }) => [name, ''])) as Record<ChartField, string>

/** A new row; it goes on where the row before it ends. */
export function nextRow(before: TypedRow | undefined): TypedRow {
  return {
    id: newId(),
    taper: before?.taper ?? '1:12',
    clearanceClass: before?.clearanceClass ?? null,
    cells: { ...emptyCells, overMm: before?.cells.inclMm ?? '' },
  }
}

/** Whether anything was typed in a row. */
export function isFilled({ cells }: TypedRow): boolean {
  return Object.values(cells).some((text) => text.trim() !== '')
}

/** A kept row as it is shown for changing, with clearances in the unit of the chart; unchanged it reads back as it was. */
export function typedRow(row: MakerChartRow, unit: LengthUnit): TypedRow {
  const cells = chartColumns.map(({ name, kind }) => {
    const value = row[name]
    if (value === null) return [name, '']
    return [name, kind === 'clearance' ? exactText(value, unit) : String(value)]
  })
  const { id, taper, clearanceClass } = row
  return { id, taper, clearanceClass, cells: Object.fromEntries(cells) as Record<ChartField, string> }
}

/** A length in µm as the shortest text in a unit that reads back to the same nanometre. */
export function exactText(um: number, unit: LengthUnit): string {
  // a nanometre is 0.000 000 04 in: twelve decimals tell any two apart
  const fixed = (toNanometres(um, 'um') / nanometresPer[unit]).toFixed(12)
  return fixed.replace(/\.?0+$/, '')
}

export interface ChartReading {
  readonly rows: MakerChartRow[]
  /** What is wrong, by `rows.<index>.<field>` as the service names it. */
  readonly faults: ReadonlyMap<string, string>
}

/** Reads the typed rows; `unit` is what clearances were typed in. */
export function readChartRows(typed: readonly TypedRow[], unit: LengthUnit): ChartReading {
  const faults = new Map<string, string>()
  const rows = typed.map(({ id, taper, clearanceClass, cells }, index) => {
    const read = chartColumns.map((column) => {
      const value = readCell(cells[column.name], column.kind, unit)
      if (value === undefined) faults.set(`rows.${index}.${column.name}`, 'not one number')
      if (value === null && column.required) faults.set(`rows.${index}.${column.name}`, 'is missing')
      return [column.name, value ?? null]
    })
    return { id, taper, clearanceClass, ...Object.fromEntries(read) } as MakerChartRow
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
    const question = chartQuestion(row)
    return question === null ? [] : [`Row ${index + 1}: ${question}`]
  })
}

/** What to ask about one row; null where it is usual, or contradicts itself, which is refused and not asked about. */
export function chartQuestion(row: Omit<MakerChartRow, 'id'>): string | null {
  if (row.overMm >= row.inclMm || row.reductionMinUm >= row.reductionMaxUm) return null
  try {
    const { sentence, suggestions } = checkChartRow(row, row.taper)
    if (sentence === null || suggestions.length === 0) return sentence
    return `${sentence} Perhaps ${suggestions.map(({ label }) => label).join(' or ')}.`
  } catch (error) {
    // further from anything usual than the check reaches: its own sentence says so
    if (error instanceof InputError) return error.message
    throw error
  }
}
