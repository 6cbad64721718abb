import { describe, expect, it } from 'vitest'
import { hoursQuestion } from './hours-question.ts'

const meter = { lastTotalHours: 46_637, lastReadAt: '2026-11-23T08:00:00Z' }
const now = new Date('2026-11-25T08:00:00Z')
const asked = (shown: number | null, last = meter as Parameters<typeof hoursQuestion>[1]) =>
  hoursQuestion(shown, last, now)

describe('hoursQuestion(shownHours, meter, now): 46 637 h were known 48 h ago', () => {
  it('asks about 46.701, a comma between thousands, and says what a comma is', () =>
    expect(asked(46.701)).toMatch(/less than the 46\u00a0637 h last known.*decimal mark/))
  it('asks about fewer hours without a word on commas where none was typed', () =>
    expect(asked(46_000)).not.toMatch(/decimal mark/))
  it('asks about 400 h in 48 h', () => expect(asked(47_037)).toMatch(/400 h more.*48 h have passed/))
  it.each([46_637, 46_685, 46_709])('lets %i h pass', (shown) => expect(asked(shown)).toBeNull())
  it('asks nothing while nothing is typed or known', () =>
    expect([asked(null), asked(5, { lastTotalHours: null, lastReadAt: null })]).toEqual([null, null]))
})
