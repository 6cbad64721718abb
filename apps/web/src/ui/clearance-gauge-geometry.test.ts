import { describe, expect, it } from 'vitest'
import { gaugeGeometry, targetWindow, type GaugeInput } from './clearance-gauge-geometry.ts'

// 100 mm bore, C3: bench 150, band 45 to 60, residual minimum 80 (all µm).
const input: GaugeInput = Object.freeze({
  benchUm: 150,
  bandUm: { minUm: 45, maxUm: 60 },
  classUm: { minUm: 135, maxUm: 170 },
  residualMinUm: 80,
  readings: [],
  meanUm: null,
})
const size = { width: 320, height: 324, labelWidth: 120, umPerUnit: 1000 }

describe('targetWindow(bench, band)', () => {
  it('runs from bench less band maximum to bench less band minimum', () => {
    expect(targetWindow(input)).toEqual({ topUm: 105, bottomUm: 90 })
  })
  it('is absent without a bench clearance or without a band', () => {
    expect(targetWindow({ ...input, benchUm: null })).toBeNull()
    expect(targetWindow({ ...input, bandUm: null })).toBeNull()
  })
})

describe('gaugeGeometry(input, size)', () => {
  it('is linear: equal clearances apart are equal pixels apart, larger higher up', () => {
    const g = gaugeGeometry(input, size)
    const perUm = (g.residual!.y - g.bench!.y) / 70
    expect(perUm).toBeGreaterThan(0)
    expect(g.window!.bottomY - g.window!.topY).toBeCloseTo(15 * perUm, 9)
    expect(g.classRange!.bottomY - g.classRange!.topY).toBeCloseTo(35 * perUm, 9)
  })

  it('keeps every fixed mark between top and bottom', () => {
    const g = gaugeGeometry(input, size)
    for (const y of [g.bench!.y, g.window!.topY, g.window!.bottomY, g.classRange!.topY, g.residual!.y]) {
      expect(y).toBeGreaterThanOrEqual(g.top)
      expect(y).toBeLessThanOrEqual(g.bottom)
    }
  })

  it('draws an empty scale when nothing is known', () => {
    const g = gaugeGeometry(
      { benchUm: null, bandUm: null, classUm: null, residualMinUm: null, readings: [], meanUm: null },
      size,
    )
    expect(g.ticks.length).toBeGreaterThan(1)
    expect([g.bench, g.window, g.classRange, g.residual, g.mean, g.toGo]).toEqual([null, null, null, null, null, null])
  })

  it('marks a reading of 1.3 mm as off the scale and does not let it squeeze the window', () => {
    const without = gaugeGeometry(input, size)
    const g = gaugeGeometry({ ...input, readings: [{ um: 1300, row: 'A' }], meanUm: 1300 }, size)
    expect(g.readings[0]).toMatchObject({ off: 'above', y: g.top })
    expect(g.mean).toEqual({ off: 'above', y: g.top })
    expect(g.window).toEqual(without.window)
  })

  it('stretches the scale for a reading somewhat beyond it', () => {
    const g = gaugeGeometry({ ...input, readings: [{ um: 60, row: 'B' }] }, size)
    expect(g.readings[0]!.off).toBeNull()
    expect(g.readings[0]!.y).toBeLessThanOrEqual(g.bottom)
    expect(g.readings[0]!.y).toBeGreaterThan(g.residual!.y)
  })

  it('stands readings left to right in the order taken, inside the plot however many', () => {
    const readings = Array.from({ length: 40 }, (_, i) => ({
      um: 150 - i,
      row: i % 2 ? ('B' as const) : ('A' as const),
    }))
    const g = gaugeGeometry({ ...input, readings }, size)
    const xs = g.readings.map(({ x }) => x)
    expect(xs).toEqual([...xs].sort((a, b) => a - b))
    expect(xs[0]).toBeGreaterThan(g.plotLeft)
    expect(xs.at(-1)).toBeLessThanOrEqual(g.plotRight)
  })

  it('stands the readings of one step in one place, newest first in age, with a trail through the means of whole steps', () => {
    const of = (step: number, a: number, b: number) => [
      { um: a, row: 'A' as const, step },
      { um: b, row: 'B' as const, step },
    ]
    const readings = [...of(0, 140, 144), ...of(1, 120, 120), { um: 100, row: 'A' as const, step: 2 }]
    const g = gaugeGeometry({ ...input, readings }, size)
    expect(g.readings.map(({ age }) => age)).toEqual([2, 2, 1, 1, 0])
    expect(g.readings[1]!.x - g.readings[0]!.x).toBe(g.readings[3]!.x - g.readings[2]!.x)
    expect(g.readings[2]!.x).toBeGreaterThan(g.readings[1]!.x)
    expect(g.trail).toHaveLength(2)
    expect(g.trail[0]!.y).toBeCloseTo((g.readings[0]!.y + g.readings[1]!.y) / 2, 9)
  })

  it('places the aim inside the window, and no way to go from a mean that is doubted', () => {
    const g = gaugeGeometry({ ...input, meanUm: 120, aimUm: { minUm: 92, maxUm: 98 }, doubted: true }, size)
    expect(g.aim).toMatchObject({ um: 95 })
    expect(g.aim!.topY).toBeGreaterThan(g.window!.topY)
    expect(g.aim!.bottomY).toBeLessThan(g.window!.bottomY)
    expect(g.toGo).toBeNull()
  })

  it('measures the way to go to the near edge of the window, and none inside it', () => {
    expect(gaugeGeometry({ ...input, meanUm: 117 }, size).toGo!.um).toBeCloseTo(12, 9)
    expect(gaugeGeometry({ ...input, meanUm: 86 }, size).toGo!.um).toBeCloseTo(-4, 9)
    for (const meanUm of [90, 98, 105]) expect(gaugeGeometry({ ...input, meanUm }, size).toGo).toBeNull()
  })

  it.each([
    ['mm', 1000],
    ['µm', 1],
    ['in', 25_400],
    ['thou', 25.4],
  ])('labels the scale in round steps of %s', (_, umPerUnit) => {
    for (const factor of [0.1, 1, 12]) {
      const scaled: GaugeInput = {
        ...input,
        benchUm: 150 * factor,
        bandUm: { minUm: 45 * factor, maxUm: 60 * factor },
        classUm: null,
        residualMinUm: 80 * factor,
      }
      const { ticks, top, bottom } = gaugeGeometry(scaled, { ...size, umPerUnit })
      const steps = ticks.slice(1).map((tick, i) => Number(tick.label) - Number(ticks[i]!.label))
      expect(ticks.length).toBeGreaterThanOrEqual(3)
      expect(ticks.length).toBeLessThanOrEqual(10)
      for (const step of steps) expect(step).toBeCloseTo(steps[0]!, 9)
      expect(['1', '2', '5']).toContain(steps[0]!.toExponential(0)[0])
      expect(new Set(ticks.map(({ label }) => label)).size).toBe(ticks.length)
      for (const { y } of ticks) expect(y >= top - 1e-9 && y <= bottom + 1e-9).toBe(true)
    }
  })

  it('refuses a clearance that is not a finite number', () => {
    expect(() => gaugeGeometry({ ...input, benchUm: Number.NaN }, size)).toThrow(RangeError)
  })
})
