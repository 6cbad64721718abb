import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chartContradictions, type EnteredChartRow } from './chart-contradictions.ts'

const row: EnteredChartRow = {
  overMm: 80,
  inclMm: 100,
  taper: '1:12',
  clearanceClass: null,
  reductionMinUm: 45,
  reductionMaxUm: 60,
  residualMinCnUm: 35,
  residualMinC3Um: 50,
  residualMinC4Um: 80,
  driveUpMinMm: 0.7,
  driveUpMaxMm: 0.9,
}
const next = { ...row, overMm: 100, inclMm: 120 }

describe('the contradictions of a chart', () => {
  it.each([
    ['rows that meet without overlap', [row, next]],
    ['the same bores for another taper', [row, { ...row, taper: '1:30' as const }]],
    ['the same bores for a class and for all classes', [row, { ...row, ...bare(), clearanceClass: 'C3' as const }]],
    ['residual minima that are left out between others', [{ ...row, residualMinC3Um: null }]],
  ])('are none in %s', (_, rows) => {
    expect(chartContradictions(rows)).toEqual([])
  })

  it('name both rows of an overlap, with their bores, wherever they stand', () => {
    const rows = [next, { ...row, overMm: 50, inclMm: 80 }, { ...row, overMm: 90, inclMm: 105 }]
    expect(chartContradictions(rows)).toEqual([
      { row: 0, field: 'inclMm', message: 'row 1 (100 to 120 mm) overlaps row 3 (90 to 105 mm)' },
      { row: 2, field: 'overMm', message: 'row 3 (90 to 105 mm) overlaps row 1 (100 to 120 mm)' },
    ])
  })

  it.each([
    ['bores that run backwards', { overMm: 100, inclMm: 80 }, 'inclMm'],
    ['a least reduction of nothing', { reductionMinUm: 0.0001 }, 'reductionMinUm'],
    ['a most reduction that is no larger, to the nanometre', { reductionMaxUm: 45.0001 }, 'reductionMaxUm'],
    ['less clearance left in a looser class', { residualMinC4Um: 40 }, 'residualMinC4Um'],
    ['half a drive-up', { driveUpMaxMm: null }, 'driveUpMaxMm'],
    ['a drive-up that runs backwards', { driveUpMaxMm: 0.6 }, 'driveUpMaxMm'],
  ])('are one for %s', (_, change, field) => {
    expect(chartContradictions([next, { ...row, ...change }]).map((fault) => [fault.row, fault.field])).toEqual([
      [1, field],
    ])
  })

  it('name the clearance left for another class than that of the row', () => {
    const faults = chartContradictions([{ ...row, clearanceClass: 'C3' }])
    expect(faults.map(({ field }) => field)).toEqual(['residualMinCnUm', 'residualMinC4Um'])
    expect(chartContradictions([{ ...row, ...bare(), residualMinC3Um: 50, clearanceClass: 'C3' }])).toEqual([])
  })

  it('have an overlap exactly where some bore of a taper and class lies in two rows', () => {
    const edge = fc.integer({ min: 1, max: 12 })
    const ranges = fc.array(
      fc.record({ over: edge, length: edge, taper: fc.constantFrom('1:12' as const, '1:30' as const) }),
      { minLength: 1, maxLength: 5 },
    )
    fc.assert(
      fc.property(ranges, (drawn) => {
        const rows = drawn.map(({ over, length, taper }) => ({ ...row, taper, overMm: over, inclMm: over + length }))
        // every bore that lies between two whole millimetres, counted one by one
        const twice = ['1:12', '1:30'].some((taper) =>
          Array.from({ length: 30 }, (_, at) => at + 0.5).some(
            (bore) => rows.filter((one) => one.taper === taper && one.overMm < bore && bore <= one.inclMm).length > 1,
          ),
        )
        expect(chartContradictions(rows).length > 0).toBe(twice)
      }),
    )
  })
})

function bare() {
  return { residualMinCnUm: null, residualMinC3Um: null, residualMinC4Um: null }
}
