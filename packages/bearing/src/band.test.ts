import { describe, expect, it } from 'vitest'
import { chooseBand, halfOfBand, residualMinimum, type BandQuery } from './band.ts'
import type { MakerChart } from './maker-chart.ts'
import { InputError } from './input-error.ts'

const chart: MakerChart = {
  title: 'Chart of the maker',
  edition: 'B',
  taper: '1:12',
  rows: [{ overMm: 80, inclMm: 100, reductionMinUm: 40, reductionMaxUm: 55, residualMinUm: { C3: 48 } }],
}
const query: BandQuery = { boreMm: 100, taper: '1:12', clearanceClass: 'C3' }
const found = <T extends { found: boolean }>(result: T): Extract<T, { found: true }> => {
  if (!result.found) throw new Error('nothing was found')
  return result as Extract<T, { found: true }>
}

describe('the clearance band and its source', () => {
  it("R-RED the position's own band comes before the maker's chart, the chart before the guide", () => {
    const own = chooseBand({ ...query, chart, ownBand: { minUm: 50, maxUm: 60 } })
    expect(own).toMatchObject({ minUm: 50, maxUm: 60, source: { kind: 'position' } })
    const charted = chooseBand({ ...query, chart })
    expect(charted).toMatchObject({ minUm: 40, maxUm: 55, source: { kind: 'maker-chart', edition: 'B' } })
    expect(chooseBand(query)).toMatchObject({
      minUm: 45,
      maxUm: 60,
      source: { kind: 'generic-guide', certainty: 'high' },
    })
  })

  it.each([
    [100, 45, 60, 'high'],
    [100.001, 50, 70, 'high'],
    [120, 50, 70, 'high'],
    [120.001, 65, 90, 'high'],
    [500, 210, 280, 'high'],
    [560, 240, 320, 'medium'],
  ])('R-RED the guide row is over < d ≤ incl: bore %s has %i to %i µm', (boreMm, minUm, maxUm, certainty) => {
    expect(chooseBand({ ...query, boreMm })).toMatchObject({ minUm, maxUm, source: { certainty } })
  })

  it('a chart without a row for the bore, or for another taper, falls back to the guide and says so', () => {
    for (const other of [
      { ...query, chart, boreMm: 110 },
      { ...query, chart, taper: '1:30' as const },
    ]) {
      const band = found(chooseBand(other))
      expect(band.source.kind).toBe('generic-guide')
      expect(band.cautions.join(' ')).toContain('Chart of the maker has no row')
    }
  })

  it('drive-up comes with the taper: 0.70 to 0.90 mm for K, 1.7 to 2.2 mm for K30 at 100 mm', () => {
    expect(found(chooseBand(query)).driveUpMm).toEqual({ min: 0.7, max: 0.9 })
    expect(found(chooseBand({ ...query, taper: '1:30' })).driveUpMm).toEqual({ min: 1.7, max: 2.2 })
  })

  it('no band is guessed outside the guide or for a cylindrical bore', () => {
    expect(chooseBand({ ...query, boreMm: 24 }).found).toBe(false)
    expect(chooseBand({ ...query, boreMm: 1001 }).found).toBe(false)
    expect(chooseBand({ ...query, taper: null }).found).toBe(false)
  })

  it('the generic guide is for spherical roller bearings only, a position’s own band for any', () => {
    expect(chooseBand({ ...query, series: '12' }).found).toBe(false)
    expect(residualMinimum({ ...query, series: '294' }).found).toBe(false)
    expect(chooseBand({ ...query, series: '12', ownBand: { minUm: 10, maxUm: 20 } }).found).toBe(true)
    for (const series of ['213', '222', '230', '239', '241']) expect(chooseBand({ ...query, series }).found).toBe(true)
  })

  it('a band that does not run upwards within 2 mm is refused', () => {
    for (const ownBand of [
      { minUm: 60, maxUm: 45 },
      { minUm: 0, maxUm: 45 },
      { minUm: 45, maxUm: 2001 },
    ]) {
      expect(() => chooseBand({ ...query, ownBand })).toThrow(InputError)
    }
  })

  it.each([
    ['CN', 35],
    ['C3', 50],
    ['C4', 80],
  ] as const)('R-RES the guide has a minimum of %s: %i µm at 100 mm', (clearanceClass, minUm) => {
    expect(residualMinimum({ ...query, clearanceClass })).toMatchObject({ found: true, minUm, clearanceClass })
  })

  it.each(['C2', 'C5'] as const)('R-RES for %s the engineer has to give the minimum', (clearanceClass) => {
    expect(residualMinimum({ ...query, clearanceClass }).found).toBe(false)
    expect(residualMinimum({ ...query, clearanceClass, ownResidualMinUm: 30 })).toMatchObject({
      found: true,
      minUm: 30,
    })
  })

  it('R-RES an own minimum of nothing is a minimum, and none given is not', () => {
    expect(residualMinimum({ ...query, ownResidualMinUm: 0 })).toMatchObject({ minUm: 0, source: { kind: 'position' } })
    expect(residualMinimum({ ...query, ownResidualMinUm: null })).toMatchObject({ minUm: 50 })
    expect(() => residualMinimum({ ...query, ownResidualMinUm: 2001 })).toThrow(InputError)
  })

  it("R-RES the chart's minimum is used before the guide's", () => {
    expect(residualMinimum({ ...query, chart })).toMatchObject({ minUm: 48, source: { kind: 'maker-chart' } })
    expect(residualMinimum({ ...query, chart, clearanceClass: 'C4' })).toMatchObject({
      source: { kind: 'generic-guide' },
    })
  })

  it.each([
    [112, 'lower', 45, 52.5],
    [138, 'upper', 52.5, 60],
    [125, 'either', 45, 60],
  ])('R-HALF a bench clearance of %i µm in 110 to 140 aims at the %s half', (benchUm, half, aimMinUm, aimMaxUm) => {
    const advice = halfOfBand(benchUm, { minUm: 110, maxUm: 140 }, found(chooseBand(query)))
    expect(advice).toMatchObject({ half, aimMinUm, aimMaxUm })
  })
})
