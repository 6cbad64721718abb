import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bandVerdicts, judgeAtLeast, judgeBetween, limitVerdicts } from './acceptance.ts'
import { formula } from './source.ts'
import { judgeReduction, judgeResidual } from './verdict.ts'

const band = { minUm: 45, maxUm: 60, source: formula('a band'), cautions: [] }
const minimum = { minUm: 50, clearanceClass: 'C3' as const, source: formula('a minimum'), rule: 'R-RES', cautions: [] }

describe('verdict on a reduction, R-U', () => {
  it.each([
    [44.999, 'under'],
    [45, 'inside'],
    [60, 'inside'],
    [60.001, 'over'],
  ])('simple acceptance: %s µm in 45 to 60 is %s', (um, verdict) => {
    expect(judgeReduction(um, band, 12, 'simple').verdict).toBe(verdict)
  })

  it.each([
    // U = 5: proven inside is 50 to 55 only, proven outside below 40 and above 65
    [39.999, 'under'],
    [40, 'not-proven'],
    [49.999, 'not-proven'],
    [50, 'inside'],
    [55, 'inside'],
    [55.001, 'not-proven'],
    [65, 'not-proven'],
    [65.001, 'over'],
  ])('proven rule with U = 5: %s µm in 45 to 60 is %s', (um, verdict) => {
    expect(judgeReduction(um, band, 5, 'proven').verdict).toBe(verdict)
  })

  it('a limit hit exactly through binary fractions is not lost: 0.1 + 0.2 against 0.3', () => {
    expect(judgeBetween(0.1 + 0.2, { minUm: 0.1, maxUm: 0.3 }, 0, 'simple')).toBe('inside')
    expect(judgeAtLeast(0.7 + 0.1, 0.8, 0, 'simple')).toBe('enough')
  })

  it('this gauge cannot prove this band: said when the band is narrower than 2U, with the ratio', () => {
    // band 15 µm, U 12 µm: 15/24 = 0.625
    expect(judgeReduction(52, band, 12, 'simple')).toMatchObject({ gaugeCannotProveBand: true, bandToGaugeRatio: 0.63 })
    expect(judgeReduction(52, band, 7.5, 'simple')).toMatchObject({ gaugeCannotProveBand: false, bandToGaugeRatio: 1 })
    expect(judgeReduction(52, band, 0, 'simple')).toMatchObject({ gaugeCannotProveBand: false, bandToGaugeRatio: null })
  })

  it('no reading is proven inside a band narrower than 2U', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 120_000 }), (nm) => {
        expect(judgeBetween(nm / 1000, band, 7.501, 'proven')).not.toBe('inside')
      }),
    )
  })

  it('a reduction below nothing is under, with the caution that before and after may be swapped', () => {
    const result = judgeReduction(-50, band, 12, 'simple')
    expect(result.verdict).toBe('under')
    expect(result.cautions.join(' ')).toContain('swapped')
  })

  it('a simple verdict tells whether it is proven too', () => {
    expect(judgeReduction(52, band, 5, 'simple').proven).toBe(true)
    expect(judgeReduction(46, band, 5, 'simple')).toMatchObject({ verdict: 'inside', proven: false })
    expect(judgeReduction(62, band, 5, 'simple')).toMatchObject({ verdict: 'over', proven: false })
    expect(judgeReduction(70, band, 5, 'simple')).toMatchObject({ verdict: 'over', proven: true })
    expect(judgeReduction(46, band, 5, 'proven')).toMatchObject({ verdict: 'not-proven', proven: false })
    expect(judgeResidual(52, minimum, 8, 'proven')).toMatchObject({ verdict: 'not-proven', proven: false })
    expect(judgeResidual(52, minimum, 8, 'simple')).toMatchObject({ verdict: 'enough', proven: false })
    expect(judgeResidual(58, minimum, 8, 'simple')).toMatchObject({ verdict: 'enough', proven: true })
  })

  it('the verdict is ordered: a larger reduction never goes back from over to under', () => {
    const order = { under: 0, 'not-proven': 1, inside: 1, over: 2 }
    fc.assert(
      fc.property(twoSorted(120_000), uncertainty(), rule(), ([low, high], guard, acceptance) => {
        const [a, b] = [judgeBetween(low, band, guard, acceptance), judgeBetween(high, band, guard, acceptance)]
        expect(order[a]).toBeLessThanOrEqual(order[b])
      }),
    )
  })

  it('the verdict never improves when a reading moves away from the middle of the band', () => {
    const good = { under: 0, over: 0, 'not-proven': 1, inside: 2 }
    fc.assert(
      fc.property(twoSorted(60_000), fc.boolean(), uncertainty(), rule(), ([near, far], above, guard, acceptance) => {
        const at = (distance: number): number => 52.5 + (above ? distance : -distance)
        const [a, b] = [judgeBetween(at(near), band, guard, acceptance), judgeBetween(at(far), band, guard, acceptance)]
        expect(good[b]).toBeLessThanOrEqual(good[a])
      }),
    )
  })

  it('the proven rule is never kinder, and never harsher, than what is proven', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 120_000 }), uncertainty(), (nm, guard) => {
        const proven = judgeBetween(nm / 1000, band, guard, 'proven')
        const simple = judgeBetween(nm / 1000, band, 0, 'simple')
        expect([simple, 'not-proven']).toContain(proven)
        expect(bandVerdicts).toContain(proven)
      }),
    )
  })
})

describe('verdict on the mounted clearance, R-RES by R-U', () => {
  it.each([
    [58, 'enough'],
    [57.999, 'not-proven'],
    [42, 'not-proven'],
    [41.999, 'too-small'],
  ])('proven rule with U = 8: %s µm against at least 50 is %s', (um, verdict) => {
    expect(judgeResidual(um, minimum, 8, 'proven').verdict).toBe(verdict)
  })

  it.each([
    [50, 'enough'],
    [49.999, 'too-small'],
  ])('simple acceptance: %s µm against at least 50 is %s', (um, verdict) => {
    expect(judgeResidual(um, minimum, 8, 'simple').verdict).toBe(verdict)
  })

  it('without a minimum there is no verdict, never a green one', () => {
    expect(judgeResidual(100, null, 8, 'simple')).toMatchObject({ verdict: 'no-minimum' })
  })

  it('a larger clearance never makes the verdict worse', () => {
    const order = { 'too-small': 0, 'not-proven': 1, enough: 2 }
    fc.assert(
      fc.property(twoSorted(200_000), uncertainty(), rule(), ([low, high], guard, acceptance) => {
        const [a, b] = [judgeAtLeast(low, 50, guard, acceptance), judgeAtLeast(high, 50, guard, acceptance)]
        expect(order[a]).toBeLessThanOrEqual(order[b])
        expect(limitVerdicts).toContain(a)
      }),
    )
  })
})

function twoSorted(max: number): fc.Arbitrary<[number, number]> {
  const value = fc.integer({ min: 0, max })
  return fc.tuple(value, value).map(([a, b]): [number, number] => [Math.min(a, b) / 1000, Math.max(a, b) / 1000])
}

function uncertainty(): fc.Arbitrary<number> {
  return fc.integer({ min: 0, max: 30_000 }).map((nm) => nm / 1000)
}

function rule(): fc.Arbitrary<'simple' | 'proven'> {
  return fc.constantFrom('simple', 'proven')
}
