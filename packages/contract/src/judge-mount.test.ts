import { describe, expect, it } from 'vitest'
import { bearing, position } from './a-22220.ts'
import { SiteSettings } from './access.ts'
import { bandOfPosition, type BandBearing } from './band-of-position.ts'
import { judgementOf, needsReason, type MountQuestion } from './judge-mount.ts'
import { Judgement } from './judgement.ts'

/** One reading in each row, before and after, in µm. */
function readings(benchUm: number, mountedUm: number): MountQuestion['readings'] {
  return (['A', 'B'] as const).flatMap((row) => [
    { moment: 'bench' as const, row, clearanceUm: benchUm },
    { moment: 'mounted' as const, row, clearanceUm: mountedUm },
  ])
}

function judged(over: Partial<MountQuestion> & { settings?: MountQuestion['settings'] } = {}): Judgement {
  const question: MountQuestion = {
    method: 'feeler',
    bearing,
    bands: bandOfPosition(position, over.bearing ?? bearing, null),
    readings: readings(125, 70),
    driveUpMm: null,
    settings: SiteSettings.parse({}),
    ...over,
  }
  return judgementOf(question)
}

describe('the judgement of a mount', () => {
  it('is one that the contract takes, with the numbers that it goes by', () => {
    const judgement = judged()
    expect(Judgement.parse(judgement)).toEqual(judgement)
    expect(judgement).toMatchObject({
      verdict: 'inside',
      residual: 'enough',
      benchMeanUm: 125,
      mountedMeanUm: 70,
      reductionUm: 55,
      band: { minUm: 45, maxUm: 60, source: { kind: 'generic-guide' } },
      residualMinUm: 50,
    })
  })

  it('follows the rules of acceptance that the site has set', () => {
    const proven = SiteSettings.parse({ reductionAcceptance: 'proven' })
    expect(judged({ settings: proven }).verdict).toBe('not-proven')
    // 53 µm is above 50 µm, but by less than U = 11.1 µm
    const near = { readings: readings(108, 53) }
    expect(judged(near).residual).toBe('not-proven')
    expect(judged({ ...near, settings: SiteSettings.parse({ residualAcceptance: 'simple' }) }).residual).toBe('enough')
  })

  it('scales the uncertainty by what the site found for one reading, and by its factor', () => {
    const settings = SiteSettings.parse({ readingStandardUncertaintyUm: 15, coverageFactor: 3 })
    // usual: one reading u² = 55.7; mean of one a row u² = 6.29 + 49.41 / 2 = 30.995
    const expectedUm = 3 * Math.sqrt(2 * 30.995) * (15 / Math.sqrt(55.7))
    expect(judged({ settings }).expandedUncertaintyUm).toBeCloseTo(expectedUm, 2)
  })

  it('is not given in numbers for a mount by feel, nor for a bearing that no guide is for', () => {
    const none = { verdict: null, residual: null, band: null, residualMinUm: null }
    expect(judged({ method: 'by-feel', readings: [] })).toMatchObject({ ...none, reductionUm: null })
    const ball: BandBearing = { ...bearing, kind: 'self-aligning-ball', series: '12' }
    expect(judged({ bearing: ball })).toMatchObject({ ...none, reductionUm: 55 })
  })

  it('does not hold a bearing of another kind against the class tables of spherical roller bearings', () => {
    const ball: BandBearing = { ...bearing, kind: 'self-aligning-ball', series: '12' }
    const own = { ...position, ownReductionMinUm: 40, ownReductionMaxUm: 60, ownBandSource: 'Engineer' }
    const judgement = judged({ bearing: ball, bands: bandOfPosition(own, ball, null) })
    expect(judgement.verdict).toBe('inside')
    expect(judgement.checks.find(({ rule }) => rule === 'R-CL2')?.outcome).toBe('not-done')
  })

  it('is not proven by drive-up alone, nor without a band; it is open while a row is missing', () => {
    expect(judged({ method: 'drive-up', readings: [], driveUpMm: 0.8 }).verdict).toBe('not-proven')
    expect(judged({ bearing: { ...bearing, boreMm: 20 }, readings: readings(40, 25) })).toMatchObject({
      verdict: 'not-proven',
      reductionUm: 15,
      band: null,
    })
    const oneRow = readings(125, 70).filter(({ row }) => row === 'A')
    expect(judged({ readings: oneRow })).toMatchObject({ verdict: null, residual: null, band: { minUm: 45 } })
  })

  it('says that the mounted clearance is too small where only that was read', () => {
    const mounted = readings(125, 38).filter(({ moment }) => moment === 'mounted')
    expect(judged({ method: 'drive-up', readings: mounted, driveUpMm: 0.8 }).residual).toBe('too-small')
  })
})

describe('needsReason', () => {
  it.each([
    ['inside', 'enough', false],
    ['inside', 'no-minimum', false],
    [null, null, false],
    ['under', 'enough', true],
    ['over', 'enough', true],
    ['not-proven', 'enough', true],
    ['inside', 'too-small', true],
    ['inside', 'not-proven', true],
  ] as const)('of %s with %s is %s', (verdict, residual, needed) => {
    expect(needsReason({ verdict, residual })).toBe(needed)
  })
})
