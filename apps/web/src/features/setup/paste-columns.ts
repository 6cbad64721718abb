import { parseNumber, type LengthUnit } from '../../lib/length-units.ts'
import { cellUnit, isBlank, splitRange } from './paste-cells.ts'

/** What a column of a pasted table may be; a column that holds both ends of a range has one role for them. */
export const columnRoles = {
  none: 'Left out',
  bore: 'Bore, both ends',
  overMm: 'Bore over',
  inclMm: 'Bore up to',
  taper: 'Taper',
  clearanceClass: 'Clearance class',
  reduction: 'Reduction, both ends',
  reductionMinUm: 'Least reduction',
  reductionMaxUm: 'Most reduction',
  residualMinCnUm: 'Least left, CN',
  residualMinC3Um: 'Least left, C3',
  residualMinC4Um: 'Least left, C4',
  driveUp: 'Drive-up, both ends',
  driveUpMinMm: 'Least drive-up',
  driveUpMaxMm: 'Most drive-up',
} as const
export type ColumnRole = keyof typeof columnRoles

export interface PastedColumn {
  readonly heading: string
  readonly role: ColumnRole
  /** The unit that the heading names. */
  readonly unit: LengthUnit | null
}

type Family = 'bore' | 'reduction' | 'driveUp'
type End = 'low' | 'high' | 'both' | null

interface Meant {
  readonly family: Family | null
  readonly end: End
  readonly role: ColumnRole
}

const ends: Record<Family, readonly [ColumnRole, ColumnRole]> = {
  bore: ['overMm', 'inclMm'],
  reduction: ['reductionMinUm', 'reductionMaxUm'],
  driveUp: ['driveUpMinMm', 'driveUpMaxMm'],
}

/** What the columns of a table mean, by their headings, or by their places where there are none. */
export function guessColumns(
  headings: readonly string[],
  lines: readonly (readonly string[])[],
  taper: string,
): PastedColumn[] {
  const count = Math.max(headings.length, ...lines.map((cells) => cells.length))
  const all = Array.from({ length: count }, (_, at) => headings[at] ?? '')
  const ranges = all.map((_, at) => holdsRanges(lines.map((cells) => cells[at] ?? '')))
  const roles = headings.length > 0 ? rolesByHeading(all, ranges, taper) : rolesByPlace(ranges)
  return all.map((heading, at) => ({ heading, role: roles[at] ?? 'none', unit: unitIn(heading) }))
}

function holdsRanges(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => !isBlank(cell))
  return filled.filter((cell) => splitRange(cell) !== null).length * 2 > filled.length
}

function rolesByHeading(headings: readonly string[], ranges: readonly boolean[], taper: string): ColumnRole[] {
  const taken = new Set<ColumnRole>()
  const take = (...wanted: readonly ColumnRole[]): ColumnRole => {
    const free = wanted.find((role) => !taken.has(role)) ?? 'none'
    taken.add(free)
    return free
  }
  return headings.map((heading, at) => {
    const { family, end, role } = meantBy(heading.toLowerCase(), taper)
    if (family === null) return role === 'none' ? role : take(role)
    if (ranges[at] || end === 'both') return take(family)
    const [low, high] = ends[family]
    return end === null ? take(low, high) : take(end === 'low' ? low : high)
  })
}

function meantBy(heading: string, taper: string): Meant {
  const nothing = { family: null, end: null }
  const ofTaper = /1\s*:\s*(?:12|30)/.exec(heading)?.[0].replaceAll(' ', '')
  if (ofTaper && ofTaper !== taper) return { ...nothing, role: 'none' }
  if (/resid|remain|\bleft\b|\bafter\b/.test(heading)) return { ...nothing, role: residualOf(heading) }
  if (/drive|axial|travel|push/.test(heading)) return { family: 'driveUp', end: endOf(heading), role: 'none' }
  if (/reduc/.test(heading)) return { family: 'reduction', end: endOf(heading), role: 'none' }
  if (/class/.test(heading)) return { ...nothing, role: 'clearanceClass' }
  if (/taper/.test(heading)) return { ...nothing, role: 'taper' }
  if (/bore|diam|\bd\b|\bover\b|\babove\b|up to|\bincl/.test(heading)) {
    return { family: 'bore', end: endOf(heading), role: 'none' }
  }
  return { ...nothing, role: 'none' }
}

function residualOf(heading: string): ColumnRole {
  if (/\bc3\b/.test(heading)) return 'residualMinC3Um'
  return /\bc4\b/.test(heading) ? 'residualMinC4Um' : 'residualMinCnUm'
}

function endOf(heading: string): End {
  const low = /\b(?:min|least|lower|smallest|over|above|from)\b|>/.test(heading)
  const high = /\b(?:max|most|upper|largest|up to|to|incl|including)\b|≤/.test(heading)
  return low && high ? 'both' : low ? 'low' : high ? 'high' : null
}

/** The order in which charts print their columns; what stands behind the reduction is told by how many columns are left. */
function rolesByPlace(ranges: readonly boolean[]): ColumnRole[] {
  const roles: ColumnRole[] = []
  const addRange = (family: Family) => roles.push(...(ranges[roles.length] ? [family] : ends[family]))
  const residuals: ColumnRole[] = ['residualMinCnUm', 'residualMinC3Um', 'residualMinC4Um']
  addRange('bore')
  addRange('reduction')
  const left = ranges.length - roles.length
  if (left === 3 || left >= 5) roles.push(...residuals)
  if (left === 2 || left >= 5 || ranges[roles.length]) addRange('driveUp')
  return ranges.map((_, at) => roles[at] ?? 'none')
}

function unitIn(heading: string): LengthUnit | null {
  const text = heading.toLowerCase()
  if (/\bmm\b|millim/.test(text)) return 'mm'
  if (/[µμ]m|\bum\b|micro/.test(text)) return 'um'
  if (/thou|\bmils?\b|0[.,]001 ?(?:in|")/.test(text)) return 'thou'
  return /inch|[([] ?in\.? ?[)\]]|, in\.?$|"/.test(text) ? 'in' : null
}

/** Whether a cell holds a number or a range: the first line with one is the first of the table's rows. */
export function holdsNumber(cell: string): boolean {
  return parseNumber(cell.replace(cellUnit, '')) !== undefined || splitRange(cell) !== null
}
