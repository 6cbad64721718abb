import { parseNumber } from '@shaftbook/bearing/number-text'
import { LabelPaper } from '@shaftbook/contract/papers'

/** The paper as typed: text of each field, so that nothing that was typed is rewritten. */
export interface LabelChoice {
  readonly paper: 'roll' | 'a4'
  readonly width: string
  readonly height: string
  readonly columns: string
  readonly rows: string
  readonly left: string
  readonly top: string
  readonly columnGap: string
  readonly rowGap: string
  readonly start: string
}
export type LabelField = Exclude<keyof LabelChoice, 'paper'>

export const usualChoice: LabelChoice = {
  paper: 'roll',
  width: '62',
  height: '29',
  columns: '3',
  rows: '8',
  left: '8',
  top: '12',
  columnGap: '3',
  rowGap: '0',
  start: '1',
}

/** Sizes of labels on a roll that many printers take, mm. */
export const rollSizes: readonly (readonly [width: number, height: number])[] = [
  [62, 29],
  [100, 50],
  [50, 25],
  [40, 60],
]

const fieldsOf: Readonly<Record<string, LabelField>> = {
  widthMm: 'width',
  heightMm: 'height',
  columns: 'columns',
  rows: 'rows',
  leftMm: 'left',
  topMm: 'top',
  columnGapMm: 'columnGap',
  rowGapMm: 'rowGap',
  startAt: 'start',
}

export type ReadChoice =
  | { readonly ok: true; readonly paper: LabelPaper }
  | { readonly ok: false; readonly faults: Partial<Record<LabelField, string>> }

/** The paper in numbers, or what is wrong at which field; numbers take comma or point. */
export function readChoice(choice: LabelChoice): ReadChoice {
  const shown = Object.entries(fieldsOf).filter(([name]) => isShown(choice.paper, name))
  const numbers = shown.map(([name, field]) => [name, parseNumber(choice[field]) ?? Number.NaN])
  const read = LabelPaper.safeParse({ paper: choice.paper, ...Object.fromEntries(numbers) })
  if (read.success) return { ok: true, paper: read.data }
  const faults = read.error.issues.map(({ path, code, ...issue }) => [
    fieldsOf[String(path[0])] ?? 'width',
    faultWords(code, issue as { minimum?: number; maximum?: number }),
  ])
  return { ok: false, faults: Object.fromEntries(faults) }
}

function isShown(paper: LabelChoice['paper'], name: string): boolean {
  const ofRoll = name === 'widthMm' || name === 'heightMm'
  return paper === 'roll' ? ofRoll : !ofRoll
}

function faultWords(code: string, { minimum, maximum }: { minimum?: number; maximum?: number }): string {
  if (code === 'too_small') return `At least ${minimum}`
  if (code === 'too_big') return `At most ${maximum}`
  return 'Enter a number'
}
