import { describe, expect, it } from 'vitest'
import { answerList, isKeptList } from './kept-lists.ts'

const row = (tag: string, more: object = {}) => ({
  tag,
  name: 'Drive end',
  areaId: 'a',
  machineId: 'm',
  dueOn: null,
  ...more,
})
const board = [
  row('BE-07 / DE', { machineName: 'Bucket elevator', designation: '22220 K/C3', dueOn: '2026-12-01' }),
  row('AS03-FN-B', { areaId: 'b', designation: '22218 K/C3', dueOn: '2026-11-02', dueState: 'overdue' }),
  row('BE-07 / NDE', { machineId: 'n', designation: '22220 K/C3' }),
]
const tags = (name: string, query: Record<string, string | number>) =>
  answerList(name, board, query)?.items.map((item) => (item as { tag: string }).tag)

describe('a kept list', () => {
  it('is searched as the service searches: codes with spaces and without, whatever the letters', () => {
    expect(tags('list-position-board', { search: 'be-07/de' })).toEqual(['BE-07 / DE'])
    expect(tags('list-position-board', { search: '22220k' })).toEqual(['BE-07 / DE', 'BE-07 / NDE'])
    expect(tags('list-position-board', { search: 'nothing so' })).toEqual([])
  })

  it('is narrowed by area, machine and state together, and an empty filter is none', () => {
    expect(tags('list-position-board', { areaId: 'a', machineId: 'n' })).toEqual(['BE-07 / NDE'])
    expect(tags('list-position-board', { dueState: 'overdue', search: '' })).toEqual(['AS03-FN-B'])
    expect(tags('list-position-board', { areaId: '' })).toHaveLength(3)
  })

  it('is sorted by tag, and by due date with what has none at the end both ways', () => {
    expect(tags('list-position-board', {})).toEqual(['AS03-FN-B', 'BE-07 / DE', 'BE-07 / NDE'])
    expect(tags('list-position-board', { sort: '-tag' })).toEqual(['BE-07 / NDE', 'BE-07 / DE', 'AS03-FN-B'])
    expect(tags('list-position-board', { sort: 'dueOn' })).toEqual(['AS03-FN-B', 'BE-07 / DE', 'BE-07 / NDE'])
    expect(tags('list-position-board', { sort: '-dueOn' })).toEqual(['BE-07 / DE', 'AS03-FN-B', 'BE-07 / NDE'])
  })

  it('comes a page at a time, every row once', () => {
    const first = answerList('list-position-board', board, { limit: 2 })
    const second = answerList('list-position-board', board, { limit: 2, cursor: first?.nextCursor ?? null })
    expect([first?.items.length, second?.items.length, second?.nextCursor]).toEqual([2, 1, null])
    expect(new Set([...(first?.items ?? []), ...(second?.items ?? [])]).size).toBe(3)
  })

  it('does not answer for rows that are never kept', () => {
    expect(answerList('list-flags', [], { state: 'cleared' })).toBeUndefined()
    expect(answerList('list-flags', [], {})).toEqual({ items: [], nextCursor: null })
    expect(answerList('list-mount-records', [], {})).toBeUndefined()
    expect(answerList('list-mount-records', [], { state: 'draft' })).toEqual({ items: [], nextCursor: null })
    expect(answerList('list-mount-plans', [], { state: 'done' })).toBeUndefined()
    expect(['list-removals', 'list-audit-entries'].some(isKeptList)).toBe(false)
  })
})
