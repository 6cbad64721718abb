import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chooseBand, residualMinimum, type BandQuery } from './band.ts'
import { InputError } from './input-error.ts'
import { judgeMount, type MountInput, type MountJudgement } from './mount.ts'
import type { RowReading } from './readings.ts'
import { formulaVersion } from './verdict.ts'

const both = (um: number, times = 3): RowReading[] =>
  Array.from({ length: times }, () => [
    { row: 'A' as const, um },
    { row: 'B' as const, um },
  ]).flat()

function mount(change: Partial<MountInput> = {}): MountInput {
  const bearing = { boreMm: 100, taper: '1:12', clearanceClass: 'C3' } as const
  const query: BandQuery = { ...bearing }
  const [band, minimum] = [chooseBand(query), residualMinimum(query)]
  return {
    bearing,
    before: both(125),
    after: both(73),
    band: band.found ? band : null,
    residualMinimum: minimum.found ? minimum : null,
    ...change,
  }
}

function judged(change: Partial<MountInput> = {}): MountJudgement {
  const result = judgeMount(mount(change))
  if (result.kind === 'refused') throw new Error(result.sentence)
  return result
}

describe('judgeMount', () => {
  it('R-RED, R-CL2, R-RES and R-RATIO: a good mount of a 22220 K/C3 is good in every part', () => {
    const result = judged({ driveUpMm: 0.8 })
    expect(result).toMatchObject({
      formulaVersion,
      reductionUm: 52,
      rowReductionUm: { A: 52, B: 52 },
      classCheck: { verdict: 'inside' },
      reduction: { verdict: 'inside', acceptance: 'simple', minUm: 45, maxUm: 60 },
      residual: { verdict: 'enough', acceptance: 'proven', minUm: 50 },
      ratio: { verdict: 'plausible', ratio: 15.385 },
    })
  })

  it('R-U uses the number of readings: 2 rows x 3 give U = 11 µm for the difference, 7.6 µm for the mean', () => {
    const { uncertainty } = judged()
    expect(Math.round(uncertainty.expandedDifferenceUm)).toBe(11)
    expect(uncertainty.expandedMountedUm).toBeCloseTo(7.6, 1)
  })

  it.each([
    [81, 'under'],
    [80, 'inside'],
    [65, 'inside'],
    [64, 'over'],
  ])('mounted at %i µm from 125 is %s the band of 45 to 60', (afterUm, verdict) => {
    expect(judged({ after: both(afterUm) }).reduction.verdict).toBe(verdict)
  })

  it.each([
    [58, 'enough'],
    [57, 'not-proven'],
    [43, 'not-proven'],
    [42, 'too-small'],
  ])('mounted at %i µm against at least 50 is %s', (afterUm, verdict) => {
    expect(judged({ after: both(afterUm) }).residual.verdict).toBe(verdict)
  })

  it.each(['before', 'after'] as const)('a missing row in the %s readings is refused, never a verdict', (side) => {
    const result = judgeMount(mount({ [side]: [{ row: 'A', um: 100 }] }))
    expect(result).toMatchObject({ kind: 'refused', code: 'row-missing', field: side })
  })

  it('a mount without any band is refused with what to do', () => {
    expect(judgeMount(mount({ band: null }))).toMatchObject({ kind: 'refused', code: 'band-missing' })
  })

  it('R-RES a C3 bearing judged by the minimum of CN is refused', () => {
    const cn = residualMinimum({ boreMm: 100, taper: '1:12', clearanceClass: 'CN' })
    expect(() => judgeMount(mount({ residualMinimum: cn.found ? cn : null }))).toThrow(InputError)
  })

  it('without a residual minimum the mount is judged and says no-minimum', () => {
    expect(judged({ residualMinimum: null }).residual.verdict).toBe('no-minimum')
  })

  it('before and after swapped is under with the caution, not inside', () => {
    const result = judged({ before: both(73), after: both(125) })
    expect(result.reduction.verdict).toBe('under')
    expect(result.cautions.join(' ')).toContain('swapped')
  })

  it('R-ROW rows that differ are a caution of the whole mount', () => {
    const after = [
      { row: 'A' as const, um: 60 },
      { row: 'B' as const, um: 86 },
    ]
    const result = judged({ after })
    expect(result.mounted.rowsAgree).toBe(false)
    expect(result.cautions.join(' ')).toContain('two rows differ')
  })

  it('a band of one source with a minimum of another is told', () => {
    const band = chooseBand({ boreMm: 100, taper: '1:12', clearanceClass: 'C3', ownBand: { minUm: 50, maxUm: 60 } })
    expect(judged({ band: band.found ? band : null }).cautions.join(' ')).toContain('different sources')
  })

  it('a site that wants reductions proven gets not-proven where the gauge cannot tell', () => {
    expect(judged({ settings: { reductionRule: 'proven' } }).reduction.verdict).toBe('not-proven')
  })

  it('a bearing with cylindrical bore is judged by its own band and its own class table', () => {
    const bearing = { boreMm: 100, taper: null, clearanceClass: 'C3' } as const
    const band = chooseBand({ ...bearing, ownBand: { minUm: 20, maxUm: 60 } })
    const result = judged({
      bearing,
      band: band.found ? band : null,
      before: both(105),
      residualMinimum: null,
      driveUpMm: 1,
    })
    expect(result.classCheck).toMatchObject({ verdict: 'inside', range: { minUm: 100, maxUm: 135 } })
    expect(result.ratio.verdict).toBe('not-done')
  })

  it('the order of readings does not matter', () => {
    const readings = fc.array(fc.integer({ min: 60, max: 90 }), { minLength: 2, maxLength: 6 })
    fc.assert(
      fc.property(readings, (values) => {
        const after = values.map((um, index): RowReading => ({ row: index % 2 ? 'A' : 'B', um }))
        expect(judged({ after }).mounted.meanUm).toBe(judged({ after: after.toReversed() }).mounted.meanUm)
      }),
    )
  })

  it('a smaller mounted reading never improves the residual verdict', () => {
    const order = { 'no-minimum': -1, 'too-small': 0, 'not-proven': 1, enough: 2 }
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 120 }), fc.integer({ min: 0, max: 30 }), (um, less) => {
        const worse = judged({ after: both(Math.max(0, um - less)) }).residual.verdict
        expect(order[worse]).toBeLessThanOrEqual(order[judged({ after: both(um) }).residual.verdict])
      }),
    )
  })
})
