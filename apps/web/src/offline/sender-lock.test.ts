import { describe, expect, it } from 'vitest'
import { leaseHolds } from './sender-lock.ts'

const now = Date.parse('2026-11-25T03:00:00Z')
const minute = 60_000

describe('the lease of the tab that sends', () => {
  it('holds until it runs out', () => {
    expect(leaseHolds({ untilMs: now + minute }, now)).toBe(true)
    expect(leaseHolds({ untilMs: now }, now)).toBe(false)
  })

  it('holds no longer than a lease lasts, where the clock of the device was put back meanwhile', () => {
    expect(leaseHolds({ untilMs: Date.parse('2031-01-01T00:00:00Z') }, now)).toBe(false)
    expect(leaseHolds({ untilMs: now + 60 * minute }, now)).toBe(false)
  })
})
