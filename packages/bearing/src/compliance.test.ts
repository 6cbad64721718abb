import { describe, expect, it } from 'vitest'
import { greasingCompliance, type GreasingDone } from './compliance.ts'
import { InputError } from './input-error.ts'

const plan = { intervalHours: 1000, calendarMonths: null }
const at = (date: string, runHours: number, givenG = 40): GreasingDone => ({ date, runHours, givenG, plannedG: 40 })
const now = { today: '2026-12-01', runHours: 5200, hoursPerDay: 10 }

describe('compliance of greasings', () => {
  it('R-COMPL doses inside the window meet it: 900 and 1100 h count, the open interval is not due yet', () => {
    const greasings = [at('2026-01-01', 1000), at('2026-04-01', 1900), at('2026-07-20', 3000), at('2026-10-01', 4300)]
    const result = greasingCompliance(plan, greasings, now)
    // the third span took 1300 h: late, one window due and not met
    expect(result).toMatchObject({ windowsDue: 3, windowsMet: 2, onTime: 2, late: 1, early: 0 })
    expect(result.percent).toBeCloseTo(66.667, 3)
  })

  it('R-COMPL a span of 3.2 intervals is three windows due and none met', () => {
    const result = greasingCompliance(plan, [at('2026-01-01', 1000), at('2026-11-20', 4200)], now)
    expect(result).toMatchObject({ windowsDue: 3, windowsMet: 0, late: 1, percent: 0 })
  })

  it('R-COMPL an early dose makes no window due', () => {
    const result = greasingCompliance(plan, [at('2026-09-01', 4000), at('2026-10-01', 4500)], now)
    expect(result).toMatchObject({ windowsDue: 0, early: 1, percent: null })
  })

  it('R-COMPL a wrong amount in time does not meet its window', () => {
    const result = greasingCompliance(plan, [at('2026-06-01', 3500), at('2026-10-01', 4500, 27)], now)
    expect(result).toMatchObject({ windowsDue: 1, windowsMet: 0, wrongAmount: 1 })
  })

  it('R-COMPL an interval that is overdue today counts as due and not met', () => {
    expect(greasingCompliance(plan, [at('2026-06-01', 4000)], now)).toMatchObject({ windowsDue: 1, windowsMet: 0 })
  })

  it('greasings out of order are refused, and no greasings say nothing', () => {
    expect(() => greasingCompliance(plan, [at('2026-06-01', 4000), at('2026-05-01', 4500)], now)).toThrow(InputError)
    expect(greasingCompliance(plan, [], now)).toMatchObject({ windowsDue: 0, percent: null })
  })
})
