import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { greaseTasks, nextOfTask, type LastDone } from './due-task.ts'
import { greaseInterval, intervalLevels, type IntervalInput } from './grease-interval.ts'
import { InputError } from './input-error.ts'
import { addDays } from './plain-date.ts'

const asked = { date: '2026-01-01', runHours: null }
const doneOn = (date: string, runHours: number | null = null): LastDone => ({ done: { date, runHours }, asked })
const never: LastDone = { done: null, asked }
const usage = (today: string, runHours: number | null = null, hoursPerDay: number | null = 10) => ({
  today,
  runHours,
  hoursPerDay,
})
const months = (calendarMonths: number) => ({ intervalHours: null, calendarMonths, calendarDays: null })
const days = (calendarDays: number) => ({ intervalHours: null, calendarMonths: null, calendarDays })

describe('next of each task', () => {
  it.each([
    // filled on 1 February for 6 months: empty on 1 August, 181 days later; the last tenth begins on day 163
    ['2026-07-13', 'not-due'],
    ['2026-07-14', 'due-soon'],
    ['2026-08-01', 'due'],
    ['2026-08-02', 'overdue'],
    ['2026-10-30', 'overdue'],
    ['2026-10-31', 'missed'],
  ])('R-CAL a lubricator that is empty after 6 months is on %s %s', (today, state) => {
    const next = nextOfTask('refill', months(6), doneOn('2026-02-01'), usage(today))
    expect(next).toMatchObject({ state, dueDate: '2026-08-01', overdueFrom: '2026-08-02', dueBy: 'calendar' })
  })

  it('a lubricator that was never filled is never-greased', () => {
    expect(nextOfTask('refill', months(6), never, usage('2026-03-01')).state).toBe('never-greased')
  })

  it('run hours do not empty a lubricator that runs by time', () => {
    const next = nextOfTask(
      'refill',
      { ...months(6), intervalHours: 10 },
      doneOn('2026-02-01', 0),
      usage('2026-02-20', 400),
    )
    expect(next).toMatchObject({ state: 'not-due', dueDate: '2026-08-01' })
  })

  it.each(['check-system', 'check-oil'] as const)('%s every 7 days is due a week after the last one', (task) => {
    expect(nextOfTask(task, days(7), doneOn('2026-03-02'), usage('2026-03-09'))).toMatchObject({
      state: 'due',
      overdueFrom: '2026-03-10',
      dueDate: '2026-03-09',
    })
  })

  it('a check that was never done counts from the day it was first asked for', () => {
    expect(nextOfTask('check-oil', days(14), never, usage('2026-01-10'))).toMatchObject({ dueDate: '2026-01-15' })
  })

  it('R-CAL oil is changed by run hours or months, the earlier', () => {
    const plan = { intervalHours: 4000, calendarMonths: 12, calendarDays: null }
    // 4000 h at 20 h a day are 200 days
    expect(nextOfTask('change-oil', plan, doneOn('2026-01-01', 1000), usage('2026-01-11', 1200, 20))).toMatchObject({
      dueDate: '2026-07-20',
      dueRunHours: 5000,
      dueBy: 'run-hours',
    })
    expect(nextOfTask('change-oil', plan, doneOn('2026-01-01', 1000), usage('2026-01-11', 1010, 1))).toMatchObject({
      dueDate: '2027-01-01',
      dueBy: 'calendar',
    })
  })

  it('turning a shaft goes by days, though the machine stands', () => {
    const still = usage('2026-03-30', 500, 0)
    expect(nextOfTask('turn-shaft', days(30), doneOn('2026-03-01', 500), still)).toMatchObject({
      dueDate: '2026-03-31',
      state: 'due-soon',
    })
  })

  it('regreasing without a greasing is never-greased, however long it was asked for', () => {
    expect(nextOfTask('regrease', months(12), never, usage('2026-03-01')).state).toBe('never-greased')
  })

  it.each([
    ['refill', days(30)],
    ['turn-shaft', months(1)],
    ['check-oil', { intervalHours: null, calendarMonths: null }],
    ['check-oil', days(1.5)],
    ['check-oil', days(0)],
  ] as const)('%s with a plan %j is refused', (task, plan) => {
    expect(() => nextOfTask(task, plan, doneOn('2026-03-01'), usage('2026-03-02'))).toThrow(InputError)
  })
})

interface Duty {
  steps: Record<'temperature' | 'dirt' | 'moisture' | 'vibration' | 'shaft', number>
  speedRpm: number
  percent: number
}

/** Steps along the levels of a factor, the worst last. */
const step = (levels: number) => fc.integer({ min: 0, max: levels - 1 })

describe('a due date when duty worsens', () => {
  const plan = fc.record({
    intervalHours: fc.integer({ min: 50, max: 8760 }),
    calendarMonths: fc.integer({ min: 1, max: 24 }),
    calendarDays: fc.integer({ min: 1, max: 700 }),
  })
  const start = '2026-01-01'
  const dueOn = (task: (typeof greaseTasks)[number], limits: object, perDay: number, elapsed: number): string => {
    const now = usage(addDays(start, elapsed), null, perDay)
    const next = nextOfTask(task, limits as never, doneOn(start), now)
    return next.dueDate ?? '9999-12-31'
  }
  const task = fc.constantFrom(...greaseTasks)
  const elapsed = fc.integer({ min: 0, max: 600 })

  it('never moves later when the machine runs more hours a day', () => {
    fc.assert(
      fc.property(
        task,
        plan,
        elapsed,
        fc.double({ min: 0, max: 24, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (which, limits, gone, more, part) => {
          expect(dueOn(which, limits, more, gone) <= dueOn(which, limits, more * part, gone)).toBe(true)
        },
      ),
    )
  })

  it('R-INT never moves later when the place gets hotter, dirtier, wetter, shakier, steeper, faster or more heavily loaded', () => {
    const names = ['temperature', 'dirt', 'moisture', 'vibration', 'shaft'] as const
    const steps = fc.record({
      temperature: step(4),
      dirt: step(4),
      moisture: step(4),
      vibration: step(3),
      shaft: step(3),
    })
    const duty = fc.record({
      steps,
      speedRpm: fc.integer({ min: 20, max: 900 }),
      percent: fc.integer({ min: 0, max: 40 }),
    })
    const hours = ({ steps: at, speedRpm, percent }: Duty): number => {
      const levels = Object.fromEntries(
        names.map((name) => [
          name,
          Object.keys(intervalLevels[name])[Math.min(at[name], Object.keys(intervalLevels[name]).length - 1)],
        ]),
      )
      const input = {
        speedRpm,
        boreMm: 100,
        loadOverRating: percent / 100,
        levels: { ...levels, bearing: 'spherical-roller' },
      }
      const interval = greaseInterval(input as IntervalInput)
      return interval.kind === 'interval' ? Math.max(1, interval.intervalHours) : 1
    }
    fc.assert(
      fc.property(duty, duty, elapsed, (before, more, gone) => {
        const worse = {
          steps: Object.fromEntries(
            names.map((name) => [name, before.steps[name] + more.steps[name]]),
          ) as typeof before.steps,
          speedRpm: before.speedRpm + more.speedRpm,
          percent: before.percent + more.percent,
        }
        const due = (intervalHours: number): string =>
          dueOn('regrease', { intervalHours, calendarMonths: 12 }, 12, gone)
        expect(due(hours(worse)) <= due(hours(before))).toBe(true)
      }),
    )
  })

  it('never moves later when any interval gets shorter', () => {
    const parts = fc.record({
      hours: fc.integer({ min: 1, max: 50 }),
      months: fc.integer({ min: 0, max: 23 }),
      days: fc.integer({ min: 0, max: 699 }),
    })
    fc.assert(
      fc.property(task, plan, elapsed, parts, (which, limits, gone, less) => {
        const shorter = {
          intervalHours: Math.max(1, limits.intervalHours - less.hours * 100),
          calendarMonths: Math.max(1, limits.calendarMonths - less.months),
          calendarDays: Math.max(1, limits.calendarDays - less.days),
        }
        expect(dueOn(which, shorter, 12, gone) <= dueOn(which, limits, 12, gone)).toBe(true)
      }),
    )
  })
})
