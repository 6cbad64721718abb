import { assert, integer, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError } from './input-error.ts'
import { stayHours } from './run-hours.ts'

const stay = Object.freeze({
  fittedAt: new Date('2026-11-01T06:00:00Z'),
  until: new Date('2026-11-11T18:00:00Z'),
  startRunHours: 1000.1,
  endRunHours: 1130.4,
  hoursPerDay: 16,
})

describe('stayHours(stay)', () => {
  it('is the difference of the meter, without binary dust (R-HOURS)', () => {
    expect(stayHours(stay)).toEqual({ runHours: 130.3, hoursSource: 'meter' })
  })

  it.each([{ startRunHours: null }, { endRunHours: null }, { endRunHours: 900 }])(
    'is days times the usual hours a day, marked, where the meter gives none: %j',
    (read) => {
      // ten and a half days of 16 h
      expect(stayHours({ ...stay, ...read })).toEqual({ runHours: 168, hoursSource: 'estimate' })
    },
  )

  it('is 0 h for a bearing that has just been fitted', () => {
    expect(stayHours({ ...stay, until: stay.fittedAt, endRunHours: null }).runHours).toBe(0)
  })

  it('refuses a stay that ends before it begins', () => {
    expect(() => stayHours({ ...stay, until: new Date('2026-10-31T06:00:00Z') })).toThrow(InputError)
  })

  it('never falls when the meter has counted more', () => {
    const hours = integer({ min: 0, max: 1_000_000 })
    assert(
      property(hours, hours, (more, ran) => {
        const less = stayHours({ ...stay, endRunHours: stay.startRunHours + ran })
        const longer = stayHours({ ...stay, endRunHours: stay.startRunHours + ran + more })
        expect(longer.runHours).toBeGreaterThanOrEqual(less.runHours)
      }),
    )
  })
})
