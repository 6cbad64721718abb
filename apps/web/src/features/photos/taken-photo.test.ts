import { expect, test } from 'vitest'
import { takenAtOf } from './taken-photo.ts'

const now = new Date('2026-11-25T08:00:00Z')

test('a photo was taken when its file was written', () => {
  expect(takenAtOf(Date.UTC(2026, 10, 24, 9, 30), now)).toBe('2026-11-24T09:30:00.000Z')
})

test.each([
  ['in the future', Date.UTC(2027, 0, 1)],
  ['at the beginning of the clock', 0],
])('a file that says it was written %s is taken as of now', (_, lastModifiedMs) => {
  expect(takenAtOf(lastModifiedMs, now)).toBe(now.toISOString())
})
