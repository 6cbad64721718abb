import { describe, expect, it } from 'vitest'
import { relativeTime } from './relative-time.ts'

const now = new Date('2026-03-15T12:00:00Z')

describe('relativeTime(instant, now)', () => {
  it.each([
    ['2026-03-15T11:59:30Z', 'just now'],
    ['2026-03-15T11:18:00Z', '42 minutes ago'],
    ['2026-03-15T09:00:00Z', '3 hours ago'],
    ['2026-03-03T12:00:00Z', '12 days ago'],
    ['2026-04-05T12:00:00Z', 'in 3 weeks'],
    ['2025-12-01T12:00:00Z', '3 months ago'],
    ['2023-03-10T12:00:00Z', '3 years ago'],
  ])('says %s as "%s"', (at, said) => expect(relativeTime(new Date(at), now)).toBe(said))
})
