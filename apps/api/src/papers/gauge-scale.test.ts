import { describe, expect, it } from 'vitest'
import { clearanceWindow, gaugeScale, spreadOut, type GaugeFigures } from './gauge-scale.ts'

// bench 150, band 45 to 60: the window is 150 − 60 = 90 to 150 − 45 = 105
const figures: GaugeFigures = {
  benchUm: 150,
  bandUm: { minUm: 45, maxUm: 60 },
  classUm: { minUm: 110, maxUm: 140 },
  residualMinUm: 50,
  readings: [],
  meanUm: null,
}

describe('clearanceWindow(bench, band)', () => {
  it('is the bench clearance less the band', () => {
    expect(clearanceWindow(150, { minUm: 45, maxUm: 60 })).toEqual({ fromUm: 90, toUm: 105 })
  })
  it('is absent without a bench clearance or a band', () => {
    expect([clearanceWindow(null, { minUm: 45, maxUm: 60 }), clearanceWindow(150, null)]).toEqual([null, null])
  })
})

describe('gaugeScale(figures)', () => {
  it('holds all that is fixed, with round steps inside it', () => {
    const { lowUm, highUm, ticksUm } = gaugeScale(figures)
    expect(lowUm).toBeLessThan(50)
    expect(highUm).toBeGreaterThan(150)
    expect(ticksUm).toEqual([40, 60, 80, 100, 120, 140, 160])
  })

  it('is not squeezed by a reading far off, and stretched by one somewhat beyond it', () => {
    const far = gaugeScale({ ...figures, readings: [{ row: 'A', um: 1300 }] })
    expect(far).toEqual(gaugeScale(figures))
    expect(gaugeScale({ ...figures, readings: [{ row: 'A', um: 20 }] }).lowUm).toBeLessThan(20)
  })

  it('is empty, not broken, where nothing is known', () => {
    const none = { benchUm: null, bandUm: null, classUm: null, residualMinUm: null, readings: [], meanUm: null }
    expect(gaugeScale(none)).toMatchObject({ lowUm: 0, highUm: 200 })
  })
})

describe('spreadOut(places, gap, low, high)', () => {
  it('moves labels apart and keeps them between the ends', () => {
    expect(spreadOut([10, 11, 12], 5, 0, 100)).toEqual([10, 15, 20])
    expect(spreadOut([98, 99, 100], 5, 0, 100)).toEqual([90, 95, 100])
  })
})
