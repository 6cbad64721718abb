import { KitChange } from '@shaftbook/contract/kits'
import { describe, expect, test } from 'vitest'
import { kitBody, kitFaults, moved, newLine, type KitEntry } from './kit-entry.ts'

const partId = '0175fcb3-2400-7fa2-9536-df0706966d31'
const line = { ...newLine('0175fcb3-2400-7f2b-a512-75744da54f2b'), partId }
const kit: KitEntry = { name: ' Kit A ', note: '', lines: [{ ...line, quantity: '0,5', unit: 'set' }] }

test('a whole kit has no faults and is sent as the contract takes it, the comma read as a number', () => {
  expect(kitFaults(kit)).toEqual({})
  expect(KitChange.parse(kitBody(kit))).toMatchObject({
    name: 'Kit A',
    lines: [{ partId, quantity: 0.5, unit: 'set', need: 'must' }],
  })
})

describe('faults name the line that they are in', () => {
  test('a line without a part, without a quantity, or without a unit', () => {
    const lines = [line, { ...newLine('x'), quantity: 'two', unit: ' ' }]
    expect(Object.keys(kitFaults({ ...kit, lines })).sort()).toEqual([
      'lines.1.partId',
      'lines.1.quantity',
      'lines.1.unit',
    ])
  })

  test('none, less than none and too many are no quantity', () => {
    for (const quantity of ['0', '-1', '100001'])
      expect(kitFaults({ ...kit, lines: [{ ...line, quantity }] })).toHaveProperty(['lines.0.quantity'])
  })

  test('a part that stands on two lines', () => {
    expect(Object.keys(kitFaults({ ...kit, lines: [line, { ...line, id: 'y' }] }))).toEqual(['lines.1.partId'])
  })

  test('a kit without a name', () => {
    expect(kitFaults({ ...kit, name: ' ' })).toHaveProperty('name')
  })
})

test('a line moves by one place and stays where there is no further one', () => {
  expect(moved(['a', 'b', 'c'], 2, -1)).toEqual(['a', 'c', 'b'])
  expect(moved(['a', 'b', 'c'], 0, 1)).toEqual(['b', 'a', 'c'])
  expect(moved(['a', 'b', 'c'], 0, -1)).toEqual(['a', 'b', 'c'])
  expect(moved(['a', 'b', 'c'], 2, 1)).toEqual(['a', 'b', 'c'])
})
