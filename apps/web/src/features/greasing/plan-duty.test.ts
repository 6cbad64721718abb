import { describe, expect, it } from 'vitest'
import { dutyOf, intervalOf } from './plan-duty.ts'

const duty = {
  speedRpm: 1000,
  boreMm: 100,
  levels: {
    temperature: '65-to-80',
    dirt: 'light-abrasive',
    moisture: '80-to-90',
    vibration: '5-to-10',
    shaft: 'horizontal',
    bearing: 'spherical-roller',
  },
  loadOverRating: 0.1,
}

describe('dutyOf(plan)', () => {
  it('reads the duty of a computed plan, and its interval is the worked one: 1000 h × 0.084 = 84 h', () => {
    const read = dutyOf({ source: 'computed', duty })
    expect(read).not.toBeNull()
    const interval = read && intervalOf(read)
    expect(interval?.kind === 'interval' && interval.intervalHours).toBeCloseTo(84, 9)
  })
  it('has none where the interval was set by hand, or where a level is not known', () => {
    expect(dutyOf({ source: 'by-hand', duty })).toBeNull()
    expect(dutyOf({ source: 'computed', duty: { ...duty, levels: { ...duty.levels, dirt: 'some' } } })).toBeNull()
  })
})

describe('intervalOf(duty)', () => {
  it('answers with a sentence where the speed is no speed', () => {
    const read = dutyOf({ source: 'computed', duty })
    expect(read && intervalOf({ ...read, speedRpm: Number.NaN })).toHaveProperty('kind', 'refused')
  })
})
