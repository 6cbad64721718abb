import { describe, expect, it } from 'vitest'
import { contamination, equivalentLoad, fatigueLimit, minimumLoad } from './life-inputs.ts'

describe('what a rating life needs', () => {
  it('P = X · Fr + Y · Fa: 30 + 2.5 · 4 = 40 kN', () => {
    expect(equivalentLoad(30, 4, { x: 1, y: 2.5 })).toMatchObject({ equivalentKn: 40, rule: 'ISO 281' })
  })

  it('eC of normal cleanliness below 100 mm lies between 0.5 and 0.6', () => {
    expect(contamination('normal_cleanliness', 99)).toMatchObject({ lowest: 0.5, highest: 0.6 })
  })

  it('Cu of C0 820 kN is 100 kN to 100 mm, less above', () => {
    expect(fatigueLimit(820, 100).fatigueLimitKn).toBeCloseTo(100, 9)
    expect(fatigueLimit(820, 200).fatigueLimitKn).toBeCloseTo(100 * 0.5 ** 0.3, 9)
  })

  it('rollers need 2 % of C, balls 1 %', () => {
    expect(minimumLoad(400, 'roller', 7.9)).toMatchObject({ minimumKn: 8, verdict: 'too-light' })
    expect(minimumLoad(400, 'roller', 8).verdict).toBe('enough')
    expect(minimumLoad(400, 'ball', null)).toMatchObject({ minimumKn: 4, verdict: 'not-judged' })
  })
})
