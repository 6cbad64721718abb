import { describe, expect, it } from 'vitest'
import { complianceSentence, fewWords, monthWords, percentText, periodStart } from './compliance-words.ts'

const tally = { met: 8, early: 0, late: 1, missed: 0, wrongAmount: 0, notDone: 1, windowsDue: 10, percent: 80 }

it.each([
  ['2026-11-25', '12', '2025-12-01'],
  ['2026-11-25', '3', '2026-09-01'],
  ['2026-01-31', '3', '2025-11-01'],
  ['2026-12-01', '36', '2024-01-01'],
])('periodStart(%s, %s months) is %s: the running month counts', (today, months, start) => {
  expect(periodStart(today, months)).toBe(start)
})

describe('a share of few windows', () => {
  it('says how far one more would move it', () => {
    expect(fewWords({ windowsDue: 8 })).toBe('Only 8 windows: one more or less moves it by 13 points.')
    expect(fewWords({ windowsDue: 1 })).toBe('Only 1 window: one more or less moves it by 100 points.')
  })

  it('says nothing of ten windows and more, nor of none', () => {
    expect([fewWords({ windowsDue: 10 }), fewWords({ windowsDue: 0 })]).toEqual([undefined, undefined])
  })
})

describe('complianceSentence({ total })', () => {
  it('tells the share with its numbers, and what came early', () => {
    expect(complianceSentence({ total: tally })).toBe('80 % of the windows were met: 8 of 10.')
    expect(complianceSentence({ total: { ...tally, early: 2 } })).toMatch(/ 2 more were greased before their window\.$/)
  })

  it('says that there was none, not that none was met', () => {
    expect(complianceSentence({ total: { ...tally, met: 0, windowsDue: 0, percent: null } })).toBe(
      'No window was due in this period.',
    )
  })
})

it('percentText and monthWords write shares and months as people do', () => {
  expect([percentText({ percent: 66.7 }), percentText({ percent: null })]).toEqual(['67 %', 'none due'])
  expect(monthWords('2026-11-01')).toBe('Nov 2026')
})
