import { describe, expect, it } from 'vitest'
import { capBolts } from './cap-bolts.ts'
import { InputError } from './input-error.ts'

const four = { size: 'M16', propertyClass: '8.8', state: 'dry', bolts: 4 } as const

describe('bolts of a cap', () => {
  it('R-BOLT without the maker’s figure the formula stands, with the order crosswise', () => {
    // 0.20 · 0.75 · 600 MPa · 156.7 mm² · 16 mm = 225.6 N·m
    const result = capBolts(four)
    expect(result.found && Math.abs(result.torqueNm - 225.6)).toBeLessThan(8)
    expect(result).toMatchObject({ order: [1, 3, 2, 4], formulaNm: null, source: { kind: 'standard' } })
  })

  it('R-BOLT the housing maker’s figure wins, is labelled, and the formula stands beside it', () => {
    const result = capBolts({ ...four, makerNm: 150 })
    expect(result).toMatchObject({ torqueNm: 150, source: { kind: 'maker-chart' }, fromNm: 142.5, toNm: 157.5 })
    expect(result.found && result.stepsNm).toEqual([45, 90, 150])
    expect(result.found && result.formulaNm).toBeGreaterThan(200)
  })

  it('R-BOLT a maker’s figure far above the formula is questioned, one for an untabled bolt is taken', () => {
    expect(capBolts({ ...four, makerNm: 400 }).cautions.join(' ')).toContain('above what the formula gives')
    expect(capBolts({ ...four, size: 'M17', makerNm: 150 })).toMatchObject({
      found: true,
      torqueNm: 150,
      formulaNm: null,
    })
    expect(capBolts({ ...four, size: 'M17' })).toMatchObject({ found: false, rule: 'R-BOLT' })
  })

  it('a number of bolts that no cap has is refused', () => {
    expect(() => capBolts({ ...four, bolts: 1 })).toThrow(InputError)
  })
})
