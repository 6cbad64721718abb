import { describe, expect, it } from 'vitest'
import { chooseBand, residualMinimum } from './band.ts'
import { rowForBearing, type ChartRow, type MakerChart } from './maker-chart.ts'

const forAll: ChartRow = { overMm: 80, inclMm: 100, reductionMinUm: 45, reductionMaxUm: 60 }
const forC3: ChartRow = { ...forAll, clearanceClass: 'C3', reductionMinUm: 50, reductionMaxUm: 66 }
const chart: MakerChart = {
  title: 'Tarnbeck, Sheet 4',
  edition: 'B',
  page: '7',
  taper: '1:12',
  rows: [forAll, { ...forC3, residualMinUm: { C3: 52 } }],
}
const query = { boreMm: 100, taper: '1:12' as const, chart }

describe('the row of a chart for a bearing', () => {
  it.each([
    ['C3', forC3],
    ['CN', forAll],
    ['C4', forAll],
  ] as const)('R-RED of class %s is the row of that class before the row for all classes', (clearanceClass, row) => {
    expect(rowForBearing([forAll, forC3], 90, clearanceClass)).toBe(row)
    expect(rowForBearing([forC3, forAll], 90, clearanceClass)).toBe(row)
  })

  it('holds for bores over its lower up to and including its upper edge', () => {
    const at = (boreMm: number) => rowForBearing([forAll], boreMm, 'CN')
    expect([at(80), at(80.01), at(100), at(100.01)]).toEqual([undefined, forAll, forAll, undefined])
  })

  it('is none for a class that only other classes have rows for', () => {
    expect(rowForBearing([forC3], 90, 'C4')).toBeUndefined()
  })
})

describe('a band from a chart with rows by class', () => {
  it('says document, edition, page, and row with its class', () => {
    const band = chooseBand({ ...query, clearanceClass: 'C3' })
    expect(band).toMatchObject({
      minUm: 50,
      maxUm: 66,
      source: { title: 'Tarnbeck, Sheet 4', edition: 'B', page: '7', row: '80 < d ≤ 100 mm, C3' },
    })
    expect(residualMinimum({ ...query, clearanceClass: 'C3' })).toMatchObject({ minUm: 52 })
  })

  it('is the guide, with a caution, where the chart has rows for other classes only', () => {
    const band = chooseBand({ ...query, chart: { ...chart, rows: [forC3] }, clearanceClass: 'C4' })
    expect(band).toMatchObject({ source: { kind: 'generic-guide' } })
    expect(band.cautions.join(' ')).toContain('class')
  })
})
