import { describe, expect, it } from 'vitest'
import { makeRandom, xoshiro128 } from './random.ts'

const many = 20_000
const draw = (from: () => number): number[] => Array.from({ length: many }, from)
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

describe('xoshiro128**', () => {
  it('gives the published sequence for the state 1, 2, 3, 4', () => {
    const next = xoshiro128([1, 2, 3, 4])
    expect([next(), next(), next(), next(), next(), next()]).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492,
    ])
  })
})

describe('makeRandom', () => {
  it('repeats itself for the same seed and differs for another', () => {
    const first = makeRandom('wheat')
    const again = makeRandom('wheat')
    const other = makeRandom('rye')
    const numbers = draw(() => first.uint32())
    expect(draw(() => again.uint32())).toEqual(numbers)
    expect(draw(() => other.uint32())).not.toEqual(numbers)
  })

  it('gives a fork its own stream, whatever is drawn from the first', () => {
    const first = makeRandom('wheat')
    const untouched = first.fork('meters').uint32()
    first.uint32()
    expect(first.fork('meters').uint32()).toBe(untouched)
    expect(first.fork('lives').uint32()).not.toBe(untouched)
  })

  it('spreads evenly, normally and by Weibull as asked', () => {
    const random = makeRandom('spread')
    expect(mean(draw(() => random.uniform(2, 6)))).toBeCloseTo(4, 1)
    const normal = draw(() => random.normal(10, 3))
    expect(mean(normal)).toBeCloseTo(10, 0)
    expect(Math.sqrt(mean(normal.map((value) => (value - 10) ** 2)))).toBeCloseTo(3, 0)
    // 63.2 % of lives end by the scale, whatever the shape; the median is scale · ln(2)^(1/shape)
    const lives = draw(() => random.weibull(1.5, 1000))
    expect(lives.filter((life) => life <= 1000).length / many).toBeCloseTo(1 - 1 / Math.E, 1)
    expect(lives.filter((life) => life <= 1000 * Math.LN2 ** (1 / 1.5)).length / many).toBeCloseTo(0.5, 1)
  })

  it('draws whole numbers between both ends and items by weight', () => {
    const random = makeRandom('pick')
    const dice = draw(() => random.integer(1, 6))
    expect(new Set(dice)).toEqual(new Set([1, 2, 3, 4, 5, 6]))
    const picks = draw(() =>
      Number(
        random.weighted([
          [true, 3],
          [false, 1],
        ] as const),
      ),
    )
    expect(mean(picks)).toBeCloseTo(0.75, 1)
    expect(() => random.pick([])).toThrow('nothing to pick')
  })

  it('makes ids of version 7 that sort by their time and never repeat', () => {
    const random = makeRandom('ids')
    const early = draw(() => 0).map(() => random.uuidAt(new Date('2021-03-04T05:06:07.089Z')))
    expect(new Set(early).size).toBe(many)
    for (const id of early) expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/)
    const stamp = Number.parseInt(String(early[0]).replaceAll('-', '').slice(0, 12), 16)
    expect(new Date(stamp).toISOString()).toBe('2021-03-04T05:06:07.089Z')
    expect(random.uuidAt(new Date('2021-03-04T05:06:07.090Z')) > String(early[0])).toBe(true)
  })
})
