import type { LifeSummary } from '@shaftbook/contract/life'
import { describe, expect, it } from 'vitest'
import { lifeSentence, modesSentence } from './life-words.ts'

const empty: LifeSummary = {
  failures: 0,
  notFailed: 0,
  lost: 0,
  running: 0,
  hours: { metered: 0, estimated: 0, running: 0, staysWithout: 0 },
  byMode: [],
  worst: [],
}
const wear = { modeClause: '5.2.2', modeTerm: 'Abrasive wear', failures: 3 }
const unknown = { modeClause: null, modeTerm: null, failures: 2 }

describe('lifeSentence(summary)', () => {
  it('adds up ended and running hours, and all bearings', () => {
    const hours = { metered: 600, estimated: 200, running: 100, staysWithout: 1 }
    expect(lifeSentence({ ...empty, failures: 1, notFailed: 2, lost: 1, running: 3, hours })).toBe(
      '1 failure in 900 run hours on record, over 7 bearings.',
    )
  })
  it('says that nothing is on record', () => {
    expect(lifeSentence(empty)).toBe('No bearing is on record yet.')
  })
})

describe('modesSentence(summary)', () => {
  it('names the most frequent mode, and how many failures have none', () => {
    expect(modesSentence({ ...empty, failures: 5, byMode: [wear, unknown] })).toBe(
      'Most often: abrasive wear, 3 of 5 failures. 2 of 5 have no mode written down.',
    )
  })
  it('names both of two modes that are level', () => {
    const rust = { modeClause: '5.3.2', modeTerm: 'Moisture corrosion', failures: 3 }
    expect(modesSentence({ ...empty, failures: 6, byMode: [wear, rust] })).toBe(
      'Most often: abrasive wear and moisture corrosion, 3 of 6 failures each.',
    )
  })
  it('claims no mode where none was written down', () => {
    expect(modesSentence({ ...empty, failures: 2, byMode: [unknown] })).toBe(
      'No failure has its mode written down yet. 2 of 2 have no mode written down.',
    )
  })
})
