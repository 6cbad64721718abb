import { describe, expect, it } from 'vitest'
import { bearingFacts, partFacts } from './bearing-facts.ts'
import { InputError } from './input-error.ts'

describe('what a code says', () => {
  it('22220 k-c3 is a 100 × 180 × 46 bearing with taper 1:12 and class C3', () => {
    expect(bearingFacts(' 22220 k-c3')).toMatchObject({
      printed: '22220 K/C3',
      boreMm: 100,
      outsideDiameterMm: 180,
      widthMm: 46,
      taper: '1:12',
      clearanceClass: 'C3',
    })
  })

  it('a bearing that no table has keeps its dimensions empty and says so', () => {
    const facts = bearingFacts('6220')
    expect(facts).toMatchObject({ boreMm: 100, outsideDiameterMm: null, widthMm: null })
    expect(facts.cautions[0]).toContain('There is no row')
  })

  it('R-KIT-PAIR a sleeve names its shaft, nut and washer; a nut its thread; a housing what it takes', () => {
    expect(partFacts('h 320').facts.join(' ')).toMatch(/Shaft 90 mm, bearing bore 100 mm.*nut KM20, locked by MB20/)
    expect(partFacts('KM20').facts.join(' ')).toContain('Thread M100x2, pitch 2 mm, 4 slots')
    expect(partFacts('SN520').facts.join(' ')).toContain('22220K with H320 on 90 mm')
    expect(partFacts('MB20').cautions.join(' ')).toContain('certainty')
  })

  it('a part without a row says so, an inch part warns', () => {
    expect(partFacts('MS3052-48').cautions[0]).toContain('No table has a row')
    expect(partFacts('AN20').cautions.join(' ')).toContain('never go with metric')
    expect(() => partFacts('nonsense')).toThrow(InputError)
  })
})
