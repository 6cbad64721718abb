import { describe, expect, it } from 'vitest'
import { bearing, position } from './a-22220.ts'
import { bandOfPosition, type BandBearing, type BandChart } from './band-of-position.ts'

const own = {
  ...position,
  ownReductionMinUm: 30,
  ownReductionMaxUm: 50,
  ownResidualMinUm: 65,
  ownBandSource: 'Engineer, hollow shaft',
}
const chartRow = {
  overMm: 80,
  inclMm: 100,
  taper: '1:12' as const,
  clearanceClass: null,
  reductionMinUm: 56,
  reductionMaxUm: 64,
  residualMinCnUm: 41,
  residualMinC3Um: 58,
  residualMinC4Um: null,
  driveUpMinMm: 0.8,
  driveUpMaxMm: 1,
}
const chart: BandChart = {
  maker: 'Tarnbeck',
  document: 'Mounting card 7',
  edition: '2025',
  page: '7',
  rows: [chartRow],
}
const ballBearing: BandBearing = { ...bearing, kind: 'self-aligning-ball', series: '12' }

describe('the band of a position', () => {
  it('is its own before the chart and the guide, with the source that the engineer named', () => {
    const { band, residualMinimum } = bandOfPosition(own, bearing, chart)
    expect(band).toMatchObject({ minUm: 30, maxUm: 50, source: { kind: 'position', title: 'Engineer, hollow shaft' } })
    expect(residualMinimum).toMatchObject({ minUm: 65, source: { kind: 'position' } })
  })

  it("is its maker's chart's before the guide, titled by maker and document, with edition, row and drive-up", () => {
    const { band, residualMinimum } = bandOfPosition(position, bearing, chart)
    const source = { kind: 'maker-chart', title: 'Tarnbeck, Mounting card 7', edition: '2025', row: '80 < d ≤ 100 mm' }
    expect(band).toMatchObject({ minUm: 56, maxUm: 64, driveUpMm: { min: 0.8, max: 1 }, source })
    expect(residualMinimum).toMatchObject({ minUm: 58, source })
  })

  it('takes the chart row of the taper and the bore, a bore at the upper edge included', () => {
    const rows = [
      { ...chartRow, taper: '1:30' as const, reductionMinUm: 10, reductionMaxUm: 20 },
      { ...chartRow, overMm: 100, inclMm: 120, reductionMinUm: 70, reductionMaxUm: 80 },
      chartRow,
    ]
    const at = (boreMm: number) => bandOfPosition(position, { ...bearing, boreMm }, { ...chart, rows }).band?.minUm
    expect([at(100), at(100.1)]).toEqual([56, 70])
  })

  it('is the guide without a chart, and with a caution where the chart has no row for the bore', () => {
    const guide = { minUm: 45, maxUm: 60, source: { kind: 'generic-guide' } }
    expect(bandOfPosition(position, bearing, null).band).toMatchObject(guide)
    expect(bandOfPosition(position, bearing, null).residualMinimum).toMatchObject({ minUm: 50 })
    const { band } = bandOfPosition(position, bearing, { ...chart, rows: [{ ...chartRow, inclMm: 90 }] })
    expect(band).toMatchObject(guide)
    expect(band?.cautions.join(' ')).toContain('Mounting card 7')
  })

  it('takes the residual minimum from the guide where the chart has none for the class', () => {
    const { band, residualMinimum } = bandOfPosition(position, { ...bearing, clearanceClass: 'C4' }, chart)
    expect([band?.source.kind, residualMinimum?.source.kind]).toEqual(['maker-chart', 'generic-guide'])
  })

  it('never comes from the guide for a bearing that is not a spherical roller bearing', () => {
    const answer = bandOfPosition(position, ballBearing, null)
    expect(answer).toMatchObject({ band: null, residualMinimum: null, judged: false })
    expect(answer.noBand).toContain('spherical roller bearings')
    expect(bandOfPosition(position, ballBearing, chart)).toMatchObject({ band: { minUm: 56 }, judged: true })
    expect(bandOfPosition(own, ballBearing, null)).toMatchObject({ band: { minUm: 30 }, judged: true })
  })

  it('is none on a cylindrical seat unless it is its own', () => {
    const straight = { ...bearing, taper: null }
    const answer = bandOfPosition({ ...position, seat: 'cylindrical' }, straight, chart)
    expect(answer).toMatchObject({ band: null, residualMinimum: null, judged: false })
    expect(answer.noBand).toContain('not driven up')
    const owned = bandOfPosition({ ...own, seat: 'cylindrical' }, straight, null)
    expect(owned).toMatchObject({ band: { minUm: 30 }, judged: true })
  })

  it('is missing for a bore that no source has, though a mount there ought to be judged', () => {
    const answer = bandOfPosition(position, { ...bearing, boreMm: 20 }, null)
    expect(answer).toMatchObject({ band: null, judged: true })
    expect(answer.noBand).toMatch(/\w+ \w+/)
  })
})
