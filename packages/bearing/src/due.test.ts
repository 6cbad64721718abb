import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { averageHoursPerDay, defaultCalendarMonths, nextGreasing, type Usage } from './due.ts'
import { InputError } from './input-error.ts'
import { addDays, addMonths, daysBetween } from './plain-date.ts'

const last = { date: '2026-01-01', runHours: 5000 }
const both = { intervalHours: 1000, calendarMonths: 12 }
const usage = (today: string, runHours: number | null, hoursPerDay: number | null = 10): Usage => ({
  today,
  runHours,
  hoursPerDay,
})

describe('plain dates', () => {
  it.each([
    ['2026-08-31', 6, '2027-02-28'],
    ['2027-08-31', 6, '2028-02-29'],
    ['2026-11-24', 12, '2027-11-24'],
    ['2024-02-29', 12, '2025-02-28'],
    ['2026-01-31', 1, '2026-02-28'],
  ])('%s plus %i months is %s', (date, months, expected) => {
    expect(addMonths(date, months)).toBe(expected)
  })

  it.each(['2026-02-29', '2026-13-01', '24.11.2026', '2026-11-24T00:00:00Z', ''])('%j is refused', (date) => {
    expect(() => addDays(date, 1)).toThrow(InputError)
  })

  it('addDays and daysBetween invert each other', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20_000, max: 20_000 }), (days) => {
        expect(daysBetween('2026-11-24', addDays('2026-11-24', days))).toBe(days)
      }),
    )
  })
})

describe('next greasing', () => {
  it('R-CAL due is the earlier of hours and calendar: 1000 h at 10 h a day come before 12 months', () => {
    const due = nextGreasing(both, last, usage('2026-02-01', 5310))
    // 690 h are left, 69 days from 1 February
    expect(due).toMatchObject({
      dueBy: 'run-hours',
      dueDate: '2026-04-11',
      dueRunHours: 6000,
      estimated: true,
      state: 'not-due',
    })
  })

  it('R-CAL the calendar comes first when the machine stands', () => {
    const due = nextGreasing(both, last, usage('2026-12-31', 5010, 0))
    expect(due).toMatchObject({ dueBy: 'calendar', dueDate: '2027-01-01', estimated: false, state: 'due-soon' })
  })

  it('hours that hardly run give no date, and the calendar still does', () => {
    const slow = usage('2026-06-30', 5001, 0.0001)
    expect(nextGreasing(both, last, slow)).toMatchObject({ dueBy: 'calendar', dueDate: '2027-01-01' })
    expect(nextGreasing({ ...both, calendarMonths: null }, last, slow)).toMatchObject({
      dueDate: null,
      dueRunHours: 6000,
    })
  })

  it('a due date is never before the last greasing, however slow the machine has become', () => {
    const slow = usage('2026-06-30', 6600, 0.0001)
    expect(nextGreasing(both, last, slow)).toMatchObject({ state: 'missed', dueDate: '2026-01-01', lateHours: 600 })
  })

  it.each([
    ['2026-06-30', 5899, 'not-due'],
    ['2026-06-30', 5900, 'due-soon'],
    ['2026-06-30', 5999, 'due-soon'],
    ['2026-06-30', 6000, 'due'],
    ['2026-06-30', 6100, 'due'],
    ['2026-06-30', 6100.5, 'overdue'],
    ['2026-06-30', 6500, 'overdue'],
    ['2026-06-30', 6501, 'missed'],
  ] as const)('R-COMPL by hours: %s at %s h is %s', (today, runHours, state) => {
    expect(nextGreasing(both, last, usage(today, runHours)).state).toBe(state)
  })

  it.each([
    // 365 days: window 328.5 to 401.5, missed beyond 547.5
    ['2026-11-25', 'not-due'],
    ['2026-11-26', 'due-soon'],
    ['2026-12-31', 'due-soon'],
    ['2027-01-01', 'due'],
    ['2027-02-06', 'due'],
    ['2027-02-07', 'overdue'],
    ['2027-07-02', 'overdue'],
    ['2027-07-03', 'missed'],
  ] as const)('R-COMPL by calendar: %s is %s', (today, state) => {
    expect(nextGreasing({ intervalHours: null, calendarMonths: 12 }, last, usage(today, null, null)).state).toBe(state)
  })

  it('the first days of the states follow from hours a day: 90 % and 100 % when reached, 110 % and 150 % when passed', () => {
    // 10 h a day from 1 January: day 90, day 100, the day after day 110, the day after day 150
    expect(nextGreasing(both, last, usage('2026-01-11', 5100))).toMatchObject({
      dueSoonFrom: '2026-04-01',
      dueDate: '2026-04-11',
      overdueFrom: '2026-04-22',
      missedFrom: '2026-06-01',
    })
  })

  it('the used part of the interval is that of the nearer limit', () => {
    expect(nextGreasing(both, last, usage('2026-06-30', 5750)).elapsedPercent).toBe(75)
    // 181 of 365 days
    expect(nextGreasing(both, last, usage('2026-07-01', 5010)).elapsedPercent).toBeCloseTo(49.589, 3)
    expect(nextGreasing(both, null, usage('2026-07-01', 5010)).elapsedPercent).toBeNull()
  })

  it('how late it is stands in hours and in days', () => {
    const due = nextGreasing(both, last, usage('2026-06-30', 6120))
    expect(due).toMatchObject({ lateHours: 120, lateDays: 12 })
    expect(nextGreasing(both, last, usage('2026-02-01', 5310))).toMatchObject({ lateHours: null, lateDays: null })
  })

  it('R-CAL without a meter, hours a day since the last greasing stand in, marked estimated', () => {
    const due = nextGreasing(both, { date: '2026-01-01', runHours: null }, usage('2026-03-02', null, 20))
    // 50 days of 20 h
    expect(due).toMatchObject({
      dueDate: '2026-02-20',
      dueRunHours: null,
      estimated: true,
      state: 'overdue',
      lateHours: 200,
    })
  })

  it('R-CAL with hours unknown the calendar is judged, 12 months where the plan has none, and it says so', () => {
    const due = nextGreasing({ intervalHours: 1000, calendarMonths: null }, last, usage('2027-01-02', null, null))
    expect(due).toMatchObject({ dueBy: 'calendar', dueDate: '2027-01-01', state: 'due' })
    expect(due.cautions.join(' ')).toContain('Run hours are unknown')
  })

  it('a position without a greasing is never-greased', () => {
    expect(nextGreasing(both, null, usage('2026-01-01', 0))).toMatchObject({ state: 'never-greased', dueDate: null })
  })

  it('R-CAL the usual calendar limit is 12 months, 6 in the wet or on a vertical shaft', () => {
    expect(defaultCalendarMonths({ wet: false, vertical: false })).toBe(12)
    expect(defaultCalendarMonths({ wet: true, vertical: false })).toBe(6)
    expect(defaultCalendarMonths({ wet: false, vertical: true })).toBe(6)
  })

  it.each([
    [{ intervalHours: null, calendarMonths: null }, usage('2026-06-01', 6000)],
    [{ intervalHours: 0, calendarMonths: 12 }, usage('2026-06-01', 6000)],
    [{ intervalHours: 1000, calendarMonths: 1.5 }, usage('2026-06-01', 6000)],
    [both, usage('2025-12-31', 6000)],
    [both, usage('2026-06-01', 4999)],
    [both, usage('2026-06-31', 6000)],
  ])('plan %j with usage %j is refused', (plan, now) => {
    expect(() => nextGreasing(plan, last, now)).toThrow(InputError)
  })

  it('the state of a day is what the dates of the states say', () => {
    const day = fc.integer({ min: 0, max: 900 })
    const months = fc.integer({ min: 1, max: 24 })
    const interval = fc.constantFrom(100, 250, 1000, 4000)
    fc.assert(
      fc.property(day, months, interval, fc.constantFrom(1, 5, 20), (days, calendarMonths, intervalHours, perDay) => {
        const today = addDays(last.date, days)
        const due = nextGreasing({ intervalHours, calendarMonths }, last, usage(today, 5000 + days * perDay, perDay))
        const reached = (from: string | null): boolean => from !== null && today >= from
        const wanted = reached(due.missedFrom)
          ? 'missed'
          : reached(due.overdueFrom)
            ? 'overdue'
            : reached(due.dueDate)
              ? 'due'
              : reached(due.dueSoonFrom)
                ? 'due-soon'
                : 'not-due'
        expect(due.state).toBe(wanted)
      }),
    )
  })

  it('waiting never makes a state milder', () => {
    const order = ['never-greased', 'not-due', 'due-soon', 'due', 'overdue', 'missed']
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 0, max: 100 }), (days, more) => {
        const at = (n: number): number =>
          order.indexOf(nextGreasing(both, last, usage(addDays(last.date, n), 5000 + n * 7, 7)).state)
        expect(at(days + more)).toBeGreaterThanOrEqual(at(days))
      }),
    )
  })

  it('averageHoursPerDay is hours over days, and refuses a meter that went backwards', () => {
    const from = { date: '2026-08-26', runHours: 1000 }
    expect(averageHoursPerDay(from, { date: '2026-11-24', runHours: 2350 })).toBe(15)
    expect(() => averageHoursPerDay(from, { date: '2026-11-24', runHours: 900 })).toThrow('exchange of the meter')
    expect(() => averageHoursPerDay(from, { date: '2026-08-26', runHours: 1001 })).toThrow(InputError)
    expect(() => averageHoursPerDay(from, { date: '2026-08-27', runHours: 1025 })).toThrow(InputError)
  })
})
