import { expect, test } from 'vitest'
import { inBinOrder } from './bin-order.ts'

test('bins are walked in order, numbers by their size, lines without a bin last', () => {
  const lines = [
    { bin: null, lineNumber: 1 },
    { bin: 'B-10-1', lineNumber: 2 },
    { bin: 'B-2-1', lineNumber: 3 },
    { bin: 'A-11-3', lineNumber: 4 },
    { bin: null, lineNumber: 5 },
  ]
  expect(inBinOrder(lines).map(({ lineNumber }) => lineNumber)).toEqual([4, 3, 2, 1, 5])
})

test('lines of one bin keep the order of the kit', () => {
  const lines = [
    { bin: 'A', lineNumber: 2 },
    { bin: 'A', lineNumber: 1 },
  ]
  expect(inBinOrder(lines).map(({ lineNumber }) => lineNumber)).toEqual([1, 2])
})
