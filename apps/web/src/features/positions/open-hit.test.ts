import { expect, test } from 'vitest'
import { meantPosition } from './open-hit.ts'

const found = [
  { id: '1', tag: 'RP02-HD-A' },
  { id: '2', tag: 'RP02-HD-B' },
]

test('the only position found is meant', () => {
  expect(meantPosition('H3124', found.slice(0, 1))).toBe('1')
})

test('a tag typed in full is meant, in any case and spacing', () => {
  expect(meantPosition(' rp02-hd-b', found)).toBe('2')
})

test('several positions without a full tag mean none of them', () => {
  expect(meantPosition('RP02', found)).toBeNull()
  expect(meantPosition('RP02', [])).toBeNull()
})
