import { describe, expect, it } from 'vitest'
import { isOld } from './keeping.ts'

const now = Date.parse('2026-11-25T03:00:00Z')

describe('what is kept on the device', () => {
  it('is fresh for a few minutes', () => {
    expect(isOld(now - 60_000, now)).toBe(false)
    expect(isOld(now - 3_600_000, now)).toBe(true)
    expect(isOld(0, now)).toBe(true)
  })

  it('is downloaded again where the clock of the device was put back since', () => {
    expect(isOld(Date.parse('2031-01-01T00:00:00Z'), now)).toBe(true)
  })
})
