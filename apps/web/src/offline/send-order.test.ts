import { array, assert, constantFrom, integer, property, record, uniqueArray } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { NoAnswerError, ProblemError } from '../api/problem-error.ts'
import { failureOf, nextToSend, pauseMs, standsBehind, type Queued } from './send-order.ts'

const item = (seq: number, positionId: string | null, state: Queued['state'] = 'waiting', site = 'north'): Queued => ({
  seq,
  site,
  positionId,
  state,
})
const refusal = (status: number) => new ProblemError({ type: '', title: '', status, code: 'x', detail: 'A sentence.' })

describe('the order of sending', () => {
  it('is the order of writing', () => {
    expect(nextToSend([item(3, 'b'), item(1, 'a'), item(2, 'a')], new Set())?.seq).toBe(1)
  })

  it('holds back what comes after a refused item of the same position, and nothing else', () => {
    const items = [item(1, 'a', 'refused'), item(2, 'a'), item(3, 'b'), item(4, null), item(5, 'a', 'waiting', 'south')]
    const sent = new Set<number>()
    for (let next = nextToSend(items, sent); next; next = nextToSend(items, sent)) sent.add(next.seq)
    expect([...sent]).toEqual([3, 4, 5])
    expect(items.map((one) => standsBehind(items, one))).toEqual([false, true, false, false, false])
  })

  it('holds back what comes after an item that was tried in vain', () => {
    expect(nextToSend([item(1, 'a'), item(2, 'a'), item(3, 'b')], new Set([1]))?.seq).toBe(3)
  })

  it('lets a position go on once its earlier item is sent', () => {
    expect(nextToSend([item(1, 'a', 'sent'), item(2, 'a')], new Set())?.seq).toBe(2)
  })

  it('never sends a later item of a position before an earlier one, whatever was sent or refused before', () => {
    const anItem = record({
      seq: integer({ min: 1, max: 30 }),
      site: constantFrom('north', 'south'),
      positionId: constantFrom('a', 'b', null),
      state: constantFrom('waiting', 'refused', 'sent'),
    })
    const queue = uniqueArray(anItem, { selector: ({ seq }) => seq, maxLength: 12 })
    assert(
      property(queue, array(integer({ min: 1, max: 30 })), (items, tried) => {
        const next = nextToSend(items as Queued[], new Set(tried))
        if (!next) return
        expect(next.state).toBe('waiting')
        expect(tried).not.toContain(next.seq)
        expect(standsBehind(items as Queued[], next)).toBe(false)
      }),
    )
  })
})

describe('an attempt that failed', () => {
  it('waits where nobody answered, asks for the sign-in at 401, and is refused only where the service said no', () => {
    expect(failureOf(new NoAnswerError(new Error('cut')))).toBe('silent')
    expect([401, 429, 500, 503].map((status) => failureOf(refusal(status)))).toEqual([
      'sign-in',
      'silent',
      'later',
      'later',
    ])
    expect([400, 403, 404, 409, 412, 413, 422].map((status) => failureOf(refusal(status)))).toEqual(
      Array.from({ length: 7 }, () => 'refused'),
    )
    expect(failureOf(new TypeError('a fault of ours'))).toBe('later')
  })

  it('is tried again after pauses that grow to five minutes', () => {
    expect([1, 2, 3, 4, 7, 50].map(pauseMs)).toEqual([5_000, 10_000, 20_000, 40_000, 300_000, 300_000])
  })
})
