import { chartContradictions } from '@shaftbook/bearing/chart-contradictions'
import { InputError } from '@shaftbook/bearing/input-error'
import { parseLength } from '@shaftbook/bearing/units'
import type { MakerChartRow } from '@shaftbook/contract/maker-charts'
import { clearanceClasses } from '@shaftbook/standards/clearance-classes'
import { parseNumber, type LengthUnit } from '../../lib/length-units.ts'
import { chartQuestion } from './chart-rows.ts'
import { cellLines, isBlank, separatorOf, splitRange, type Separator } from './paste-cells.ts'
import { columnRoles, guessColumns, holdsNumber, type ColumnRole, type PastedColumn } from './paste-columns.ts'

export type PastedRow = Omit<MakerChartRow, 'id'>

/** What a person says of a table that the table does not say itself; null: as the table seems to be. */
export interface PasteChoices {
  readonly separator: Separator | null
  readonly roles: Readonly<Record<number, ColumnRole>>
  readonly clearanceUnit: LengthUnit | null
  readonly driveUpUnit: LengthUnit
  readonly taper: MakerChartRow['taper']
  readonly clearanceClass: MakerChartRow['clearanceClass']
}

export interface PastedLine {
  /** Where it stands in the pasted text, from 1. */
  readonly number: number
  readonly cells: readonly string[]
  readonly row: PastedRow | null
  /** What is wrong with the line; nothing of it is taken then. */
  readonly faults: readonly string[]
  /** What is unusual about it, to look at once more. */
  readonly question: string | null
}

export interface PastedChart {
  readonly separator: Separator
  readonly columns: readonly PastedColumn[]
  /** The unit that clearances are read in. */
  readonly clearanceUnit: LengthUnit
  readonly lines: readonly PastedLine[]
  /** Roles without which no line is a row. */
  readonly missing: readonly string[]
  /** Roles that more than one column has. */
  readonly twice: readonly string[]
}

/** Reads a table that was pasted from a spreadsheet or a document, line by line; nothing is guessed inside a cell. */
export function readPastedChart(text: string, choices: PasteChoices): PastedChart {
  const separator = choices.separator ?? separatorOf(text)
  const all = cellLines(text, separator)
  const first = all.findIndex(({ cells }) => cells.some(holdsNumber))
  const body = first === -1 ? [] : all.slice(first)
  const headings = headingsOf(all.slice(0, first === -1 ? undefined : first).map(({ cells }) => cells))
  const guessed = guessColumns(
    headings,
    body.map(({ cells }) => cells),
    choices.taper,
  )
  const columns = guessed.map((column, at) => ({ ...column, role: choices.roles[at] ?? column.role }))
  const clearanceUnit = choices.clearanceUnit ?? unitOfClearances(columns, body)
  const missing = missingRoles(columns)
  const twice = rolesTakenTwice(columns)
  const read = body.map((line) => ({ ...line, ...readLine(line.cells, columns, { ...choices, clearanceUnit }) }))
  const lines =
    missing.length + twice.length > 0 ? read.map((line) => ({ ...line, ...notRead })) : withContradictions(read)
  return { separator, columns, clearanceUnit, lines, missing, twice }
}

/** The headings over each column; a cell that spans several stands over all of them. */
function headingsOf(lines: readonly (readonly string[])[]): string[] {
  const heads = lines.filter((cells) => cells.filter((cell) => cell !== '').length > 1)
  const spread = heads.map((cells, at) =>
    at === heads.length - 1 ? cells : cells.map((_, column) => cells.slice(0, column + 1).findLast(Boolean) ?? ''),
  )
  const count = Math.max(0, ...spread.map((cells) => cells.length))
  return Array.from({ length: count }, (_, column) =>
    spread
      .map((cells) => cells[column] ?? '')
      .join(' ')
      .trim(),
  )
}

const isClearance = (role: ColumnRole): boolean => /^re(?:duction|sidual)/.test(role)

/** As the headings say; without a word, numbers that all lie below one are millimetres, others micrometres. */
function unitOfClearances(columns: readonly PastedColumn[], body: readonly { cells: readonly string[] }[]): LengthUnit {
  const named = columns.find(({ role, unit }) => unit !== null && isClearance(role))
  if (named?.unit) return named.unit
  const numbers = body.flatMap(({ cells }) =>
    cells.flatMap((cell, at) => (isClearance(columns[at]?.role ?? 'none') ? (parseNumber(cell) ?? []) : [])),
  )
  return numbers.length > 0 && numbers.every((value) => value < 1) ? 'mm' : 'um'
}

function missingRoles(columns: readonly PastedColumn[]): string[] {
  const has = (role: ColumnRole) => columns.some((column) => column.role === role)
  const wanted = [
    ['bore', 'overMm', 'inclMm'],
    ['reduction', 'reductionMinUm', 'reductionMaxUm'],
  ] as const
  return wanted.flatMap(([both, low, high]) =>
    has(both) ? [] : [low, high].filter((role) => !has(role)).map((role) => columnRoles[role]),
  )
}

function rolesTakenTwice(columns: readonly PastedColumn[]): string[] {
  const taken = columns.flatMap(({ role }) =>
    role === 'bore' || role === 'reduction' || role === 'driveUp' ? bothEnds[role] : [role],
  )
  return (Object.keys(columnRoles) as ColumnRole[])
    .filter((role) => role !== 'none' && taken.filter((other) => other === role).length > 1)
    .map((role) => columnRoles[role])
}

const empty: PastedRow = {
  overMm: Number.NaN,
  inclMm: Number.NaN,
  taper: '1:12',
  clearanceClass: null,
  reductionMinUm: Number.NaN,
  reductionMaxUm: Number.NaN,
  residualMinCnUm: null,
  residualMinC3Um: null,
  residualMinC4Um: null,
  driveUpMinMm: null,
  driveUpMaxMm: null,
}
const needed = ['overMm', 'inclMm', 'reductionMinUm', 'reductionMaxUm'] as const
const bothEnds = {
  bore: ['overMm', 'inclMm'],
  reduction: ['reductionMinUm', 'reductionMaxUm'],
  driveUp: ['driveUpMinMm', 'driveUpMaxMm'],
} as const

type Units = Pick<PasteChoices, 'driveUpUnit' | 'taper' | 'clearanceClass'> & { clearanceUnit: LengthUnit }
const notRead = { row: null, faults: [], question: null } as const
type LineRead = Pick<PastedLine, 'row' | 'faults'>

function readLine(cells: readonly string[], columns: readonly PastedColumn[], choices: Units): LineRead {
  const values: Record<string, unknown> = { taper: choices.taper, clearanceClass: choices.clearanceClass }
  const faults: string[] = []
  columns.forEach((column, at) => {
    const text = cells[at] ?? ''
    if (column.role === 'none' || isBlank(text)) return
    const read = readCell(text, column, choices)
    if (typeof read === 'string') faults.push(`${columnRoles[column.role]}: ${read}`)
    else Object.assign(values, read)
  })
  const roles = new Set(columns.map(({ role }) => role))
  const lost = needed.filter(
    (name) => values[name] === undefined && !faults.some((fault) => fault.startsWith(of(name))),
  )
  faults.push(...lost.map((name) => `${columnRoles[name]} is missing`))
  return faults.length > 0 ? { row: null, faults } : { row: { ...empty, ...values }, faults }

  /** The column that a fault at this end would be named by. */
  function of(name: (typeof needed)[number]): string {
    const both = name.endsWith('Mm') ? 'bore' : 'reduction'
    return columnRoles[roles.has(both) ? both : name]
  }
}

/** What a cell says, or what is wrong with it. */
function readCell(text: string, { role, unit }: PastedColumn, choices: Units): Partial<PastedRow> | string {
  if (role === 'taper') return readTaper(text)
  if (role === 'clearanceClass') return readClass(text)
  if (role === 'none') return {}
  const clearance = role.endsWith('Um') || role === 'reduction'
  const ofDriveUp = role.startsWith('driveUp')
  const usual = clearance ? choices.clearanceUnit : ofDriveUp ? (unit ?? choices.driveUpUnit) : (unit ?? 'mm')
  const value = (typed: string) => readValue(typed, usual, clearance)
  if (role !== 'bore' && role !== 'reduction' && role !== 'driveUp') {
    const read = value(text)
    return typeof read === 'string' ? read : { [role]: read }
  }
  const range = splitRange(text)
  if (!range) return `“${text}” is no range such as 80-100`
  const [low, high] = [value(range.from), value(range.to)]
  if (typeof low === 'string') return low
  return typeof high === 'string' ? high : { [bothEnds[role][0]]: low, [bothEnds[role][1]]: high }
}

/** A length in µm for a clearance, in mm for a bore or a drive-up; a sentence where it is none. */
function readValue(typed: string, unit: LengthUnit, clearance: boolean): number | string {
  try {
    const { valueUm } = parseLength(typed, unit)
    if (valueUm < 0) return `“${typed}” is below 0`
    return clearance ? valueUm : valueUm / 1000
  } catch (error) {
    if (error instanceof InputError) return `“${typed}” is not one number`
    throw error
  }
}

function readTaper(text: string): Partial<PastedRow> | string {
  const found = /^(?:1\s*:\s*)?(12|30)$/.exec(text.trim())?.[1]
  return found ? { taper: found === '12' ? '1:12' : '1:30' } : `“${text}” is neither 1:12 nor 1:30`
}

function readClass(text: string): Partial<PastedRow> | string {
  const plain = text.trim().toUpperCase()
  if (plain === 'ALL') return { clearanceClass: null }
  const found = clearanceClasses.find((name) => name === plain || (name === 'CN' && plain === 'NORMAL'))
  return found ? { clearanceClass: found } : `“${text}” is none of C2, CN, C3, C4, C5`
}

/** Adds what only the rows together show: contradictions are faults, what is unusual is a question. */
function withContradictions(lines: readonly (Omit<PastedLine, 'question'> & LineRead)[]): PastedLine[] {
  const readable = lines.flatMap(({ row }, at) => (row ? [{ row, at }] : []))
  const found = chartContradictions(
    readable.map(({ row }) => row),
    (at) => (readable[at]?.at ?? 0) + 1,
  )
  return lines.map((line, at) => {
    const own = found.filter((fault) => readable[fault.row]?.at === at).map(({ message }) => message)
    const question = line.row && own.length === 0 ? chartQuestion(line.row) : null
    return { ...line, faults: [...line.faults, ...own], question }
  })
}
