import type { DueItem } from '@shaftbook/contract/greasing'
import type { Flag } from '@shaftbook/contract/flags'
import type { PositionListItem } from '@shaftbook/contract/position-views'

export type KeptQuery = Readonly<Record<string, string | number | boolean | null | undefined>>

interface ListRule<Row> {
  /** The fields that a search looks into. */
  searched: readonly (keyof Row & string)[]
  /** Other filters of the query, by the field that must be equal. */
  equal: readonly (keyof Row & string)[]
  /** False where the query asks for rows that are never kept. */
  answers?: (query: KeptQuery) => boolean
  compare?: (query: KeptQuery) => (a: Row, b: Row) => number
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)
const asked = (query: KeptQuery, name: string, usual: string): boolean => (query[name] ?? usual) === usual

const board: ListRule<PositionListItem> = {
  searched: ['tag', 'name', 'machineTag', 'machineName', 'designation'],
  equal: ['areaId', 'machineId', 'verdict', 'dueState'],
  compare: ({ sort }) => {
    const down = typeof sort === 'string' && sort.startsWith('-') ? -1 : 1
    if (sort !== 'dueOn' && sort !== '-dueOn') return (a, b) => down * byText(a.tag, b.tag)
    // positions without a due date come last, whichever way the dates run
    const last = down === 1 ? '9999' : '0000'
    return (a, b) => down * byText(a.dueOn ?? last, b.dueOn ?? last)
  },
}
const due: ListRule<DueItem> = {
  searched: ['tag', 'positionName', 'machineName', 'greaseName'],
  equal: ['areaId', 'task', 'state', 'positionId'],
  compare: () => (a, b) => byText(a.dueOn, b.dueOn),
}
const flags: ListRule<Flag> = {
  searched: ['tag', 'machineTag', 'machineName', 'shaftName'],
  equal: ['areaId', 'kind', 'positionId'],
  answers: (query) => asked(query, 'state', 'open'),
}
const register: ListRule<Record<string, string>> = {
  searched: ['name', 'code', 'designation', 'basicCode', 'maker', 'document'],
  equal: [],
}

/** The lists that a device keeps, and how it answers what is asked of them. */
const rules: Readonly<Record<string, ListRule<never>>> = {
  'list-position-board': board,
  'list-due-greasings': due,
  'list-flags': flags,
  'list-mount-records': {
    searched: ['tag', 'machineName', 'designation', 'fitter'],
    equal: ['positionId'],
    answers: (query) => query['state'] === 'draft',
  } satisfies ListRule<Record<string, string>>,
  'list-mount-plans': {
    searched: [],
    equal: ['positionId', 'areaId'],
    answers: (query) => asked(query, 'state', 'open'),
  } satisfies ListRule<Record<string, string>>,
  'list-areas': register,
  'list-bearing-types': register,
  'list-greases': register,
  'list-gauges': register,
  'list-guns': register,
  'list-rounds': register,
  'list-maker-charts': register,
}

export function isKeptList(name: string): boolean {
  return name in rules
}

/**
 * A page of a kept list, filtered and sorted as the service does it; undefined where the query asks for rows that are
 * never kept. Codes are found with spaces and without. The cursor is the number of rows before the page.
 */
export function answerList(
  name: string,
  rows: readonly object[],
  query: KeptQuery,
): { items: object[]; nextCursor: string | null } | undefined {
  const rule = rules[name] as unknown as ListRule<Record<string, unknown>> | undefined
  if (!rule || rule.answers?.(query) === false) return undefined
  const wanted = folded(query['search'])
  const found = (rows as Record<string, unknown>[]).filter(
    (row) =>
      rule.equal.every((field) => !query[field] || row[field] === query[field]) &&
      (wanted === '' || rule.searched.some((field) => folded(row[field]).includes(wanted))),
  )
  const sorted = rule.compare ? found.toSorted(rule.compare(query)) : found
  const from = Number(query['cursor'] ?? 0)
  const to = from + Number(query['limit'] ?? 50)
  return { items: sorted.slice(from, to), nextCursor: to < sorted.length ? String(to) : null }
}

function folded(value: unknown): string {
  return typeof value === 'string' ? value.replaceAll(/\s/g, '').toLowerCase() : ''
}
