/** What parts the columns of a pasted table. */
export const separators = { tab: 'tabs', semicolon: 'semicolons', comma: 'commas', spaces: 'spaces' } as const
export type Separator = keyof typeof separators

const marks = { tab: '\t', semicolon: ';', comma: ',' } as const

export interface CellLine {
  /** Where the line begins in the pasted text, from 1. */
  readonly number: number
  readonly cells: readonly string[]
}

/** What a table seems to be parted by: tabs before semicolons before commas, where commas are no decimal marks. */
export function separatorOf(text: string): Separator {
  if (text.includes('\t')) return 'tab'
  if (text.includes(';')) return 'semicolon'
  const numbered = text.split(/\r?\n/).filter((line) => /\d/.test(line))
  const bySpaces = numbered.filter((line) => {
    const words = line.trim().split(/\s+/)
    return words.length > 2 && words.every((word) => !word.endsWith(','))
  })
  if (text.includes(',') && bySpaces.length < numbered.length) return 'comma'
  return 'spaces'
}

/** The lines of a pasted table with their cells; empty lines are left out. Cells may be quoted, as spreadsheets do it. */
export function cellLines(text: string, separator: Separator): CellLine[] {
  const lines = separator === 'spaces' ? spacedLines(text) : quotedLines(text, marks[separator])
  return lines.filter(({ cells }) => cells.some((cell) => cell !== ''))
}

function spacedLines(text: string): CellLine[] {
  const lines = text.split(/\r?\n/)
  // wide gaps part columns where there are any, so that "80 to 100" can be one cell
  const gap = lines.some((line) => / {2,}/.test(line.trim())) ? / {2,}/ : /\s+/
  return lines.map((line, at) => ({ number: at + 1, cells: line.trim().split(gap) }))
}

function quotedLines(text: string, mark: string): CellLine[] {
  const cell = new RegExp(String.raw`(?:[ ]*"((?:[^"]|"")*)"[ ]*|([^${mark}\r\n]*))(${mark}|\r?\n|$)`, 'y')
  const lines: { number: number; cells: string[] }[] = [{ number: 1, cells: [] }]
  let number = 1
  while (cell.lastIndex < text.length) {
    const [, quoted, plain = '', end = ''] = cell.exec(text) ?? []
    lines.at(-1)?.cells.push((quoted?.replaceAll('""', '"') ?? plain).replaceAll(/\s+/g, ' ').trim())
    number += (quoted?.match(/\n/g) ?? []).length
    if (end.includes('\n')) {
      number += 1
      lines.push({ number, cells: [] })
    } else if (end === '') break
  }
  return lines
}

/** The words that may stand around the two numbers of a range. */
const rangeWords = /^(?:over|above|from|up|to|and|including|inclusive|incl|d|[<>≤≥=.…–—−-]|\s)*$/
/** A unit at the end of a cell. */
export const cellUnit = /\s*(mm|[µμ]m|um|microns?|inch(?:es)?|in|thou|")\.?$/i

export interface RangeText {
  readonly from: string
  readonly to: string
}

/**
 * The two numbers of a range such as "80-100", "over 80 incl. 100", "80 < d ≤ 100" or "45 to 60 µm", as they were typed,
 * each with the unit that stands behind; null where the text is none.
 */
export function splitRange(text: string): RangeText | null {
  const plain = text.trim().toLowerCase()
  const unit = cellUnit.exec(plain)?.[1] ?? ''
  const bare = plain.replace(cellUnit, '').replaceAll(/(?<=\d)\s*mm\b/g, '')
  const numbers = [...bare.matchAll(/\d+(?:[.,]\d+)?/g)]
  const [from, to] = numbers
  if (!from || !to || numbers.length > 2) return null
  const between = bare.slice(from.index + from[0].length, to.index)
  const around = bare.slice(0, from.index) + between + bare.slice(to.index + to[0].length)
  // a sign before the first number makes it no range but a number that is none
  if (between === '' || !rangeWords.test(around) || /^[-–−.]/.test(bare)) return null
  return { from: `${from[0]}${unit}`, to: `${to[0]}${unit}` }
}

/** Nothing, as tables print it. */
export function isBlank(text: string): boolean {
  return /^(?:[-–—−.…]*|n\/a)$/i.test(text.trim())
}
