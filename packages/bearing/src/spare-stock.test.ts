import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from './input-error.ts'
import { shelfLife } from './shelf-life.ts'
import { minimumStock, orderAdvice } from './spare-stock.ts'

/** Oracle: plain sum with factorials. */
function poissonUpTo(n: number, mean: number): number {
  let [sum, factorial] = [0, 1]
  for (let k = 0; k <= n; k += 1) {
    if (k > 0) factorial *= k
    sum += (mean ** k / factorial) * Math.exp(-mean)
  }
  return sum
}

describe('spare stock', () => {
  it.each([
    // mean 0.5: P(0) 0.6065, P(≤1) 0.9098, P(≤2) 0.9856
    [2, 13, 2],
    // mean 2: P(≤4) 0.9473, P(≤5) 0.9834
    [8, 13, 5],
    [0, 13, 0],
  ])('R-STOCK %i a year and %i weeks need %i on the shelf for 95 %%', (perYear, weeks, minimum) => {
    expect(minimumStock(perYear, weeks).minimum).toBe(minimum)
  })

  it('R-STOCK the minimum reaches the target and one less does not', () => {
    const target = fc.constantFrom(0.8, 0.9, 0.95, 0.99)
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100 }),
        fc.integer({ min: 1, max: 52 }),
        target,
        (perYear, weeks, wanted) => {
          const { minimum, covered } = minimumStock(perYear, weeks, wanted)
          const mean = (perYear * weeks) / 52
          expect(covered).toBeCloseTo(poissonUpTo(minimum, mean), 9)
          expect(covered).toBeGreaterThanOrEqual(wanted - 1e-9)
          expect(minimum === 0 ? 0 : poissonUpTo(minimum - 1, mean)).toBeLessThan(wanted)
        },
      ),
    )
  })

  it('R-STOCK a demand of thousands still has an answer', () => {
    expect(minimumStock(1000, 520).minimum).toBeGreaterThan(10_000)
  })

  it.each([
    [{ onHand: 3, onOrder: 0, reserved: 0, minimum: 2 }, false, 3],
    [{ onHand: 3, onOrder: 0, reserved: 1, minimum: 2 }, true, 2],
    [{ onHand: 0, onOrder: 4, reserved: 1, minimum: 2 }, false, 3],
  ])('R-STOCK %j orders: %s', (stock, order, free) => {
    expect(orderAdvice(stock)).toMatchObject({ order, free })
  })

  it('pieces are whole and not below nothing', () => {
    expect(() => orderAdvice({ onHand: 1.5, onOrder: 0, reserved: 0, minimum: 0 })).toThrow(InputError)
    expect(() => orderAdvice({ onHand: -1, onOrder: 0, reserved: 0, minimum: 0 })).toThrow(InputError)
    expect(() => minimumStock(Number.NaN, 10)).toThrow(InputError)
  })
})

describe('shelf life', () => {
  it.each([
    ['bearing', '2023-11-24', null, '2026-11-24', 'good'],
    ['bearing', '2023-11-23', null, '2026-11-23', 'expired'],
    ['sealed-bearing', '2024-12-01', null, '2026-12-01', 'good'],
    ['grease', '2025-01-01', '2025-06-01', '2026-06-01', 'expired'],
    ['grease', '2024-01-01', '2026-06-01', '2027-01-01', 'good'],
    ['seal', '2021-11-24', null, '2026-11-24', 'good'],
  ] as const)('%s packed %s, opened %s, lasts to %s: %s', (item, packed, opened, expires, verdict) => {
    expect(shelfLife(item, { packed, opened, today: '2026-11-24' })).toMatchObject({ expires, verdict })
  })
})
