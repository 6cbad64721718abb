import { describe, expect, it } from 'vitest'
import { comparedWords, dutyEntryOf, dutyTyped, firstLimit, hoursOf } from './duty-entry.ts'

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
  outerRingTurns: false,
  capLifted: false,
} as const

describe('a duty in fields', () => {
  it('comes back from its fields as it was', () => {
    expect(dutyTyped(dutyEntryOf(duty), 100)).toEqual(duty)
  })
  it('takes a comma, and no load as not known', () => {
    const entry = { ...dutyEntryOf(duty), speedRpm: '1480,5', loadOverRating: '' }
    expect(dutyTyped(entry, 100)).toMatchObject({ speedRpm: 1480.5, loadOverRating: null })
  })
})

describe('hoursOf(duty)', () => {
  it('is the worked interval: 1000 h × 0.5 × 0.4 × 0.7 × 0.6 = 84 h, and × 2 where it is cool', () => {
    expect(hoursOf(duty)).toBe(84)
    expect(hoursOf({ ...duty, levels: { ...duty.levels, temperature: 'below-65' } })).toBe(168)
  })
  it('is none where the speed is not readable', () => {
    expect(hoursOf({ ...duty, speedRpm: Number.NaN })).toBeNull()
  })
})

describe('firstLimit(plan, hoursPerDay)', () => {
  it('is the run hours of a machine that runs a lot', () => {
    expect(firstLimit({ intervalHours: 2000, calendarMonths: 12 }, 20)).toEqual({ by: 'hours', days: 100 })
  })
  it('is the calendar where the machine stands', () => {
    expect(firstLimit({ intervalHours: 2000, calendarMonths: 12 }, 0)).toEqual({ by: 'calendar', days: 365 })
    expect(firstLimit({ intervalHours: 2000, calendarMonths: 6 }, 2)).toEqual({ by: 'calendar', days: 182 })
  })
})

describe('comparedWords(presentHours, trialHours)', () => {
  it.each([
    [840, 840, 'as now'],
    [840, 420, '50 % of it'],
    [840, 1680, '2 times as long'],
    [100, 1010, 'more than ten times as long'],
    [1000, 50, 'less than a tenth as long'],
  ])('%d h beside %d h is %s', (present, trial, words) => expect(comparedWords(present, trial)).toBe(words))
})
