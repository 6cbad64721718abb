import { describe, expect, it } from 'vitest'
import { spreadLabels } from './spread-labels.ts'

describe('spreadLabels(places, gap, low, high)', () => {
  it('leaves labels that have room where they are', () => {
    expect(spreadLabels([20, 60, 100], 16, 10, 200)).toEqual([20, 60, 100])
  })
  it('moves crowded labels apart by at least the gap, in order and inside the bounds', () => {
    const ys = spreadLabels([95, 96, 97, 99], 16, 10, 100)
    ys.slice(1).forEach((y, i) => expect(y - ys[i]!).toBeGreaterThanOrEqual(16))
    expect(ys.at(-1)).toBeLessThanOrEqual(100)
    expect(ys[0]).toBeGreaterThanOrEqual(10)
  })
})
