import { expect, test } from 'vitest'
import { meantHit } from './meant-hit.ts'
import type { Hits } from './stores-queries.ts'

const found = (
  positions: { id: string; tag: string }[],
  parts: { id: string; number: string; designation: string }[],
  kits: { id: string; name: string }[] = [],
) =>
  ({
    positions: { items: positions, nextCursor: null },
    parts: { items: parts, nextCursor: null },
    kits: { items: kits, nextCursor: null },
  }) as unknown as Hits

const sleeve = { id: 's', number: 'HP-10020', designation: 'H3124' }
const position = { id: 'p', tag: 'RP02-HD-A' }

test('a code typed in full means its part, though positions and kits hold it too', () => {
  const hits = found([position], [sleeve], [{ id: 'k', name: '22224 K/C3, SN524' }])
  expect(meantHit('h 3124', hits)).toEqual({ kind: 'part', id: 's' })
  expect(meantHit('hp-10020', hits)).toEqual({ kind: 'part', id: 's' })
})

test('a tag typed in full means its position', () => {
  expect(meantHit('RP02-HD-A', found([position, { id: 'q', tag: 'RP02-HD-AB' }], []))).toEqual({
    kind: 'position',
    id: 'p',
  })
})

test('the one thing found is meant, whatever was typed', () => {
  expect(meantHit('RP02', found([position], []))).toEqual({ kind: 'position', id: 'p' })
})

test('several things, or two with the same code, mean nothing yet', () => {
  expect(meantHit('RP', found([position], [sleeve]))).toBeNull()
  expect(meantHit('H3124', found([], [sleeve, { ...sleeve, id: 't', number: 'HP-2' }]))).toBeNull()
  expect(meantHit('x', found([], []))).toBeNull()
})
