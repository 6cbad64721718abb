import { describe, expect, it } from 'vitest'
import { inWalkingOrder, moved } from './stop-order.ts'

describe('moving a stop', () => {
  it.each([
    [0, 2, 'bcad'],
    [3, 0, 'dabc'],
    [1, 2, 'acbd'],
    [0, -1, 'abcd'],
    [3, 4, 'abcd'],
    [2, 2, 'abcd'],
  ])('from %s to %s', (from, to, expected) => {
    expect(moved(['a', 'b', 'c', 'd'], from, to).join('')).toBe(expected)
  })

  it('leaves the list that it was given alone', () => {
    const items = ['a', 'b']
    moved(items, 0, 1)
    expect(items).toEqual(['a', 'b'])
  })
})

describe('the walking order', () => {
  it('goes by area as it is walked, then machine, position and task; an unknown area is last', () => {
    const stop = (areaId: string, machineTag: string, tag: string, task = 'regrease') => ({
      areaId,
      machineTag,
      tag,
      task,
    })
    const stops = [
      stop('elsewhere', 'A', 'A-1'),
      stop('far', 'B', 'B-2'),
      stop('near', 'C', 'C-1', 'turn-shaft'),
      stop('near', 'C', 'C-1', 'check-oil'),
      stop('far', 'B', 'B-1'),
      stop('far', 'A', 'A-9'),
    ]
    const order = inWalkingOrder(stops, ['near', 'far']).map(({ tag, task }) => `${tag} ${task}`)
    expect(order).toEqual([
      'C-1 check-oil',
      'C-1 turn-shaft',
      'A-9 regrease',
      'B-1 regrease',
      'B-2 regrease',
      'A-1 regrease',
    ])
  })
})
