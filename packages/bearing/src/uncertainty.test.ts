import { describe, expect, it } from 'vitest'
import { InputError } from './input-error.ts'
import {
  budgetOfReading,
  defaultBudget,
  differenceUncertaintyUm,
  expandedUncertaintyUm,
  readingUncertaintyUm,
} from './uncertainty.ts'

/** Rows of readings that make up n readings in all. */
const rowsOf = new Map([
  [1, [1]],
  [2, [1, 1]],
  [4, [2, 2]],
  [6, [3, 3]],
])

describe('uncertainty of feeler readings, R-U', () => {
  it.each([
    [1, 7.5],
    [2, 5.6],
    [4, 4.3],
    [6, 3.8],
  ])('the mean of %i readings has u = %s µm', (n, u) => {
    expect(Math.abs(readingUncertaintyUm(rowsOf.get(n) ?? []) - u)).toBeLessThan(0.06)
  })

  it.each([
    [1, 10.5, 21],
    [2, 7.9, 16],
    [4, 6.1, 12],
    [6, 5.4, 11],
  ])('a difference of two means of %i has u = %s and U = %s µm', (n, u, expanded) => {
    const one = readingUncertaintyUm(rowsOf.get(n) ?? [])
    expect(Math.abs(differenceUncertaintyUm(one, one) - u)).toBeLessThan(0.06)
    expect(Math.round(expandedUncertaintyUm(differenceUncertaintyUm(one, one)))).toBe(expanded)
  })

  it('a row with fewer readings weighs on the mean of the row means', () => {
    // random part (2.9² + 4² + 5²) = 49.41, common part 2.3² + 1² = 6.29; shares (1 + 1/3)/4 = 1/3
    expect(readingUncertaintyUm([1, 3])).toBeCloseTo(Math.sqrt(6.29 + 49.41 / 3), 12)
  })

  it("a site's own budget and guard factor replace the defaults", () => {
    const exact = { bladeUm: 0, stepUm: 0, feelUm: 3, seatingUm: 4, temperatureUm: 0 }
    expect(readingUncertaintyUm([1], exact)).toBe(5)
    expect(expandedUncertaintyUm(5, 1.65)).toBe(8.25)
  })

  it("a site's own uncertainty of one reading scales every part of the usual budget alike", () => {
    const budget = budgetOfReading(15)
    expect(readingUncertaintyUm([1], budget)).toBeCloseTo(15, 12)
    // usual: u² of one reading = 6.29 + 49.41 = 55.7, of one in each row = 6.29 + 49.41 / 2
    expect(readingUncertaintyUm([1, 1], budget)).toBeCloseTo(15 * Math.sqrt((6.29 + 49.41 / 2) / 55.7), 12)
    expect(budget.bladeUm / budget.feelUm).toBeCloseTo(2.3 / 4, 12)
    expect(() => budgetOfReading(-1)).toThrow(InputError)
  })

  it('no readings, or a budget below nothing, is refused', () => {
    expect(() => readingUncertaintyUm([])).toThrow(InputError)
    expect(() => readingUncertaintyUm([0, 2])).toThrow(InputError)
    expect(() => readingUncertaintyUm([1], { ...defaultBudget, feelUm: -1 })).toThrow(InputError)
  })
})
