import { describe, expect, it } from 'vitest'
import { plantClock, plantInstant } from './plant-time.ts'

describe('plantClock(at, timeZone)', () => {
  it('shows the hour of the plant, not of the browser', () => {
    expect(plantClock(new Date('2026-07-01T23:30:00Z'), 'Europe/Berlin')).toBe('2026-07-02T01:30')
    expect(plantClock(new Date('2026-01-01T00:05:00Z'), 'America/Chicago')).toBe('2025-12-31T18:05')
  })
})

describe('plantInstant(text, timeZone)', () => {
  it.each([
    ['2026-07-02T01:30', 'Europe/Berlin', '2026-07-01T23:30:00.000Z'],
    ['2026-01-15T08:00', 'Europe/Berlin', '2026-01-15T07:00:00.000Z'],
    ['2026-03-29T03:00', 'Europe/Berlin', '2026-03-29T01:00:00.000Z'],
    ['2025-12-31T18:05', 'America/Chicago', '2026-01-01T00:05:00.000Z'],
    ['2026-11-24T14:05', 'UTC', '2026-11-24T14:05:00.000Z'],
  ])('reads %s in %s', (text, zone, instant) => expect(plantInstant(text, zone)).toBe(instant))

  it('takes an hour that the clock skips as the one after it', () => {
    expect(plantInstant('2026-03-29T02:30', 'Europe/Berlin')).toBe('2026-03-29T01:30:00.000Z')
  })

  it.each(['', '2026-11-24', '2026-13-01T10:00', 'yesterday'])('refuses "%s"', (text) =>
    expect(plantInstant(text, 'UTC')).toBeUndefined(),
  )
})
