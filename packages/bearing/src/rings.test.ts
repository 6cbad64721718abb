import { describe, expect, it } from 'vitest'
import { InputError } from './input-error.ts'
import { locatingRings } from './rings.ts'

describe('locating rings', () => {
  it.each([
    [62.4, 40, 11.2],
    [65, 40, 12.5],
    [62.4, 52.4, 5],
    [65, 52.4, 6.3],
  ])('R-RING seat %s with bearing width %s takes two rings of %s mm', (seatWidthMm, bearingWidthMm, widthMm) => {
    expect(locatingRings({ seatWidthMm, bearingWidthMm, locating: true })).toMatchObject({
      kind: 'rings',
      count: 2,
      widthMm,
    })
  })

  it('R-RING one ring of the full difference sets the bearing off centre by half of it', () => {
    const plan = locatingRings({ seatWidthMm: 65, bearingWidthMm: 40, locating: true, oneRing: true })
    expect(plan).toMatchObject({ kind: 'rings', count: 1, widthMm: 25, offCentreMm: 12.5 })
  })

  it('R-RING a non-locating bearing gets no ring and needs room to grow: 3 m by 50 K is 1.8 mm', () => {
    const free = { seatWidthMm: 65, bearingWidthMm: 40, locating: false, shaftLengthMm: 3000, temperatureRiseK: 50 }
    expect(locatingRings(free)).toMatchObject({ kind: 'none', endPlayEachSideMm: 12.5, neededMm: 1.8, enough: true })
    expect(locatingRings({ ...free, seatWidthMm: 43.6 })).toMatchObject({ endPlayEachSideMm: 1.8, enough: true })
    expect(locatingRings({ ...free, seatWidthMm: 43.59 })).toMatchObject({ enough: false })
  })

  it('R-RING a bearing wider than its seat, or a seat without room for rings, is refused', () => {
    expect(locatingRings({ seatWidthMm: 39.9, bearingWidthMm: 40, locating: false }).kind).toBe('refused')
    expect(locatingRings({ seatWidthMm: 40, bearingWidthMm: 40, locating: true }).kind).toBe('refused')
  })

  it('growth needs length and temperature together', () => {
    const half = { seatWidthMm: 65, bearingWidthMm: 40, locating: false, shaftLengthMm: 3000 }
    expect(() => locatingRings(half)).toThrow(InputError)
  })
})
