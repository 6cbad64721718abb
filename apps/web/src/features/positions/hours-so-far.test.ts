import { expect, test } from 'vitest'
import { hoursSoFar } from './hours-so-far.ts'

const now = new Date('2026-11-24T12:00:00Z')
const stay = {
  fittedAt: '2026-11-14T12:00:00.000Z',
  entryAgeHours: 0,
  startTotalHours: 4000,
  meter: { lastReadAt: '2026-11-20T08:00:00.000Z', lastTotalHours: 4120.5 },
  hoursPerDay: 18,
}

test('the meter counts from its reading at the mount to its last reading', () => {
  expect(hoursSoFar(stay, now)).toEqual({ hours: 120.5, source: 'meter', readAt: '2026-11-20T08:00:00.000Z' })
})

test('hours that the bearing brought with it are added', () => {
  expect(hoursSoFar({ ...stay, entryAgeHours: 4000 }, now).hours).toBe(4120.5)
})

test('without a reading at the mount, ten days at 18 h a day are an estimate of 180 h', () => {
  expect(hoursSoFar({ ...stay, startTotalHours: null }, now)).toEqual({ hours: 180, source: 'estimate' })
})

test('without a meter the hours are estimated', () => {
  expect(hoursSoFar({ ...stay, meter: null }, now)).toEqual({ hours: 180, source: 'estimate' })
})

test('a last reading from before the mount says nothing about this bearing', () => {
  const meter = { lastReadAt: '2026-11-10T08:00:00.000Z', lastTotalHours: 4000 }
  expect(hoursSoFar({ ...stay, meter }, now).source).toBe('estimate')
})

test('a bearing fitted a moment ago has no hours, not fewer than none', () => {
  expect(hoursSoFar({ ...stay, meter: null, fittedAt: '2026-11-24T12:00:30.000Z' }, now).hours).toBe(0)
})
