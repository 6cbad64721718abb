import { describe, expect, it } from 'vitest'
import { checkClass, clearanceRange, reductionUm } from './clearance.ts'

describe('clearance classes', () => {
  it.each([
    [100, 'tapered', 'C3', 110, 140],
    [100.001, 'tapered', 'C3', 135, 170],
    [120, 'tapered', 'C3', 135, 170],
    [120.001, 'tapered', 'C3', 160, 200],
    [100, 'cylindrical', 'C3', 100, 135],
    [80, 'tapered', 'CN', 70, 95],
  ] as const)('R-CL1 bore %s, %s, %s is %i to %i µm', (boreMm, bore, clearanceClass, minUm, maxUm) => {
    expect(clearanceRange(boreMm, bore, clearanceClass)).toMatchObject({ found: true, range: { minUm, maxUm } })
  })

  it.each([18, 1000.001, Number.NaN])('R-CL1 there is no row for a bore of %s mm', (boreMm) => {
    expect(clearanceRange(boreMm, 'tapered', 'CN')).toMatchObject({ found: false })
  })

  const bearing = { boreMm: 100, bore: 'tapered', clearanceClass: 'C3' } as const

  it.each([
    [110, 'inside'],
    [109.999, 'under'],
    [140, 'inside'],
    [140.001, 'over'],
  ])('R-CL2 simple acceptance: %s µm against 110 to 140 is %s', (benchUm, verdict) => {
    expect(checkClass(benchUm, bearing, 10).verdict).toBe(verdict)
  })

  it('R-CL2 a bench clearance outside its class names the class that it reads like', () => {
    expect(checkClass(95, bearing, 0)).toMatchObject({ verdict: 'under', readsLike: ['CN'] })
    expect(checkClass(140, bearing, 0)).toMatchObject({ readsLike: ['C3', 'C4'] })
    expect(checkClass(95, bearing, 0).cautions[0]).toContain('It reads like CN.')
  })

  it('R-CL2 the proven rule keeps the guard band on both sides of each limit', () => {
    expect(checkClass(119, bearing, 10, 'proven').verdict).toBe('not-proven')
    expect(checkClass(121, bearing, 10, 'proven').verdict).toBe('inside')
    expect(checkClass(99, bearing, 10, 'proven').verdict).toBe('under')
  })

  it('a bore outside the table has no verdict, with the reason', () => {
    expect(checkClass(100, { ...bearing, boreMm: 1200 }, 10)).toMatchObject({ verdict: 'no-row' })
  })

  it('a bearing of another kind has no verdict by the tables of spherical roller bearings', () => {
    expect(checkClass(125, { ...bearing, series: 'NU2' }, 0)).toMatchObject({ verdict: 'no-row' })
    expect(checkClass(125, { ...bearing, series: '222' }, 0)).toMatchObject({ verdict: 'inside' })
  })

  it('a row of less than high certainty says so', () => {
    const range = clearanceRange(600, 'cylindrical', 'C3')
    expect(range.found && range.source.certainty).toBe('medium')
    expect(range.found && range.cautions).toHaveLength(1)
  })

  it('a cell that is remembered with another number says so, for the class it belongs to', () => {
    const cautions = (name: 'C4' | 'C5'): string => {
      const range = clearanceRange(75, 'cylindrical', name)
      return range.found ? range.cautions.join(' ') : range.reason
    }
    expect(cautions('C5')).toContain('180 µm')
    expect(cautions('C4')).toBe('')
  })

  it('R-RED reduction is before minus after, without binary dust', () => {
    expect(reductionUm(125.1, 72.9)).toBe(52.2)
    expect(reductionUm(70, 125)).toBe(-55)
  })
})
