import { expect, it } from 'vitest'
import { formatCount } from './format-count.ts'

it('a count has a gap before every three digits from the right, and no decimals', () => {
  const texts = [0, 7, 999, 1000, 41_280, 999_999.4, 1_234_567, -1000, -0.2].map(formatCount)
  expect(texts.map((text) => text.replaceAll('\u00a0', '_'))).toEqual([
    '0',
    '7',
    '999',
    '1_000',
    '41_280',
    '999_999',
    '1_234_567',
    '-1_000',
    '0',
  ])
})
