import { describe, expect, it } from 'vitest'
import { figureLine, isMissed, median, quantile } from './figures.ts'

describe('quantile()', () => {
  it('is a value that was measured: the smallest that the share does not exceed', () => {
    expect(median([30, 10, 20])).toBe(20)
    expect(quantile([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20], 0.95)).toBe(19)
    expect(quantile([7], 0.95)).toBe(7)
    expect(() => quantile([], 0.5)).toThrow('There are no values.')
  })
})

describe('a figure', () => {
  it('is missed above its budget, kept at it, and neither without one', () => {
    expect(isMissed({ what: 'a', value: 100, budget: 100, unit: 'ms' })).toBe(false)
    expect(isMissed({ what: 'a', value: 100.1, budget: 100, unit: 'ms' })).toBe(true)
    expect(isMissed({ what: 'a', value: 1e9, unit: 'ms' })).toBe(false)
  })

  it('stands on a line with its budget and the outcome', () => {
    expect(figureLine({ what: 'Start', value: 250.06, budget: 250, unit: 'kB' })).toMatch(
      /^Start +250\.1 kB  at most 250\.0 kB +MISSED$/,
    )
    expect(figureLine({ what: 'Start', value: 99.6, unit: 'ms' })).toMatch(/^Start +100 ms$/)
  })
})
