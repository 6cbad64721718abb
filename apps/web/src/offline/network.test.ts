import { describe, expect, it } from 'vitest'
import { pauseAfter } from './network.ts'

describe('pauseAfter(heldMs, lastPauseMs)', () => {
  it('asks soon after a network that held for more than a minute', () => {
    expect(pauseAfter(61_000, 80_000)).toBe(5_000)
    expect(pauseAfter(Infinity, 5_000)).toBe(5_000)
  })

  it('doubles the pause where the network fell silent again at once, up to five minutes', () => {
    expect(pauseAfter(3_000, 5_000)).toBe(10_000)
    expect(pauseAfter(3_000, 160_000)).toBe(300_000)
    expect(pauseAfter(0, 300_000)).toBe(300_000)
  })
})
