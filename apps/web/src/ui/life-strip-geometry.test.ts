import { describe, expect, it } from 'vitest'
import { lifeStripGeometry, type LifeFitment } from './life-strip-geometry.ts'

const today = '2026-01-01T00:00:00Z'
const fitment = (given: Partial<LifeFitment>): LifeFitment =>
  Object.freeze({ id: 'a', bearing: '22220 K/C3', fittedOn: '2022-01-01T00:00:00Z', greasedOn: [], ...given })

function daily(from: string, count: number): string[] {
  return Array.from({ length: count }, (_, i) => new Date(Date.parse(from) + i * 86_400_000).toISOString())
}

describe('lifeStripGeometry(fitments, today, width)', () => {
  it('draws an open fitment from its first day to today', () => {
    const { bars } = lifeStripGeometry([fitment({})], today, 400)
    expect(bars[0]).toMatchObject({ x: 0, width: 400, open: true })
  })

  it('places a fitment in proportion to its days', () => {
    // 1461 days from 2022 to 2026; 2023-01-01 is day 365, 2024-01-01 day 730.
    const { bars } = lifeStripGeometry(
      [
        fitment({ removedOn: '2023-01-01T00:00:00Z', end: 'failed' }),
        fitment({ id: 'b', fittedOn: '2023-01-01T00:00:00Z', removedOn: '2024-01-01T00:00:00Z', end: 'removed' }),
      ],
      today,
      1461,
    )
    expect(bars[0]!.x).toBeCloseTo(0, 9)
    expect(bars[0]!.width).toBeCloseTo(365, 9)
    expect(bars[1]!.x).toBeCloseTo(365, 9)
    expect(bars[1]!.width).toBeCloseTo(365, 9)
    expect(bars[1]!.open).toBe(false)
  })

  it('keeps a fitment of one day visible, and inside the strip when it began today', () => {
    const { bars } = lifeStripGeometry([fitment({}), fitment({ id: 'b', fittedOn: today })], today, 328)
    expect(bars[1]!.width).toBe(5)
    expect(bars[1]!.x + bars[1]!.width).toBeLessThanOrEqual(328)
  })

  it('shows at least one year when the position is younger', () => {
    const { bars } = lifeStripGeometry([fitment({ fittedOn: '2025-12-02T00:00:00Z' })], today, 365)
    expect(bars[0]!.x).toBeCloseTo(335, 9)
  })

  it('shows an empty year when nothing was ever fitted', () => {
    const strip = lifeStripGeometry([], today, 328)
    expect(strip).toMatchObject({ bars: [], greasings: 0, ticksDrawn: 0 })
    expect(strip.years.map(({ label }) => label)).toEqual(['2026'])
  })

  it('thins greasings closer than 4 px and counts them all', () => {
    const strip = lifeStripGeometry([fitment({ greasedOn: daily('2022-01-01T00:00:00Z', 1400) })], today, 328)
    expect(strip.greasings).toBe(1400)
    expect(strip.ticksDrawn).toBeLessThanOrEqual(328 / 4 + 1)
    const { ticks } = strip.bars[0]!
    ticks.slice(1).forEach((x, i) => expect(x - ticks[i]!).toBeGreaterThanOrEqual(4))
  })

  it('draws every greasing where there is room, in order of time', () => {
    const greasedOn = ['2024-06-01T00:00:00Z', '2022-06-01T00:00:00Z', '2023-06-01T00:00:00Z']
    const { bars } = lifeStripGeometry([fitment({ greasedOn })], today, 328)
    expect(bars[0]!.ticks).toHaveLength(3)
    expect(bars[0]!.ticks).toEqual([...bars[0]!.ticks].sort((a, b) => a - b))
  })

  it('keeps the marks of neighbouring fitments at least 14 px apart', () => {
    const { bars } = lifeStripGeometry(
      [
        fitment({ removedOn: '2024-01-01T00:00:00Z', end: 'failed' }),
        fitment({ id: 'b', fittedOn: '2024-01-02T00:00:00Z', removedOn: '2024-01-20T00:00:00Z', end: 'failed' }),
        fitment({ id: 'c', fittedOn: '2024-01-21T00:00:00Z' }),
      ],
      today,
      328,
    )
    expect(bars[2]!.startX - bars[1]!.startX).toBeGreaterThanOrEqual(14)
    expect(bars[1]!.endX - bars[0]!.endX).toBeGreaterThanOrEqual(14)
  })

  it('labels years at least 40 px apart', () => {
    for (const from of ['2024', '2020', '2005', '1970']) {
      const { years } = lifeStripGeometry([fitment({ fittedOn: `${from}-03-01T00:00:00Z` })], today, 328)
      expect(years.length).toBeGreaterThan(0)
      years.slice(1).forEach(({ x }, i) => expect(x - years[i]!.x).toBeGreaterThanOrEqual(39))
    }
  })

  it('refuses a date that is none', () => {
    expect(() => lifeStripGeometry([fitment({ fittedOn: 'soon' })], today, 328)).toThrow(RangeError)
  })
})
