import { plantDay } from '@shaftbook/contract/time-zone'
import { describe, expect, it } from 'vitest'
import { addDays, daysBetween, formatDay } from './format-day.ts'

describe('days of the plant', () => {
  it('formatDay(day) writes the day itself, whatever the time zone of the machine', () => {
    expect(formatDay('2026-02-01')).toBe('1 Feb 2026')
  })
  it('plantDay(at, timeZone) is the day on the wall of the plant', () => {
    expect(plantDay(new Date('2026-02-01T23:30:00Z'), 'Europe/Berlin')).toBe('2026-02-02')
    expect(plantDay(new Date('2026-02-01T03:30:00Z'), 'America/Chicago')).toBe('2026-01-31')
  })
  it('daysBetween(from, to) counts days over a change of the clock', () => {
    expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2)
    expect(daysBetween('2026-03-30', '2026-03-28')).toBe(-2)
  })
  it('addDays(day, days) goes over the end of a month and a leap day', () => {
    expect(addDays('2028-02-28', 2)).toBe('2028-03-01')
  })
})
