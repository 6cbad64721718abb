import { expect, test } from 'vitest'
import { fitWithin } from './fit-within.ts'

test.each([
  [4000, 3000, { widthPx: 1600, heightPx: 1200 }],
  [3000, 4000, { widthPx: 1200, heightPx: 1600 }],
  [1601, 1601, { widthPx: 1600, heightPx: 1600 }],
  [1600, 900, { widthPx: 1600, heightPx: 900 }],
  [320, 240, { widthPx: 320, heightPx: 240 }],
])('%i × %i px keeps its proportions and is never blown up', (width, height, wanted) => {
  expect(fitWithin(width, height, 1600)).toEqual(wanted)
})

test('a strip keeps at least one pixel of its short side', () => {
  expect(fitWithin(20_000, 1, 1600)).toEqual({ widthPx: 1600, heightPx: 1 })
})
