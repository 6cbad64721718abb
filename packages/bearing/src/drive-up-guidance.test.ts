import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chooseBand, residualMinimum, type BandQuery } from './band.ts'
import { driveUpAdvices } from './drive-up-advice.ts'
import { driveUpGuidance, type DriveUpGuided } from './drive-up-guidance.ts'
import type { DriveUpStep, GuidanceInput } from './drive-up-steps.ts'
import { stacksOf } from './feeler-blades.ts'
import { InputError } from './input-error.ts'
import { judgeMount, type MountJudgement } from './mount.ts'
import type { RowReading } from './readings.ts'

const both = (um: number, times = 1): RowReading[] =>
  Array.from({ length: times }, () => [
    { row: 'A' as const, um },
    { row: 'B' as const, um },
  ]).flat()
const step = (um: number, more: Omit<DriveUpStep, 'readings'> = {}): DriveUpStep => ({ readings: both(um), ...more })

function input(change: Partial<GuidanceInput> = {}, query: Partial<BandQuery> = {}): GuidanceInput {
  const asked: BandQuery = { boreMm: 100, taper: '1:12', clearanceClass: 'C3', ...query }
  const [band, minimum] = [chooseBand(asked), residualMinimum(asked)]
  return {
    bearing: { boreMm: asked.boreMm, taper: asked.taper, clearanceClass: asked.clearanceClass },
    bench: both(125),
    steps: [],
    band: band.found ? band : null,
    residualMinimum: minimum.found ? minimum : null,
    travelTrusted: true,
    ...change,
  }
}

function guided(change: Partial<GuidanceInput> = {}, query: Partial<BandQuery> = {}): DriveUpGuided {
  const result = driveUpGuidance(input(change, query))
  if (result.kind !== 'guided') throw new Error(result.sentence)
  return result
}

const codes = ({ warnings }: DriveUpGuided): string[] => warnings.map(({ code }) => code)

describe('guidance of a drive-up, 22220 K/C3: band 45 to 60 µm, residual minimum 50 µm', () => {
  // By hand: u of 1 reading a row is sqrt(2.3² + 1² + (2.9² + 4² + 5²) / 2) = 5.567 µm, U of a difference 2·√2·5.567 = 15.747 µm.
  it.each([
    [125, 'go-on'],
    [95.748, 'go-on'], // 29.252 taken out, 15.748 to go: more than the gauge can tell
    [95.747, 'nearly-there'],
    [80.001, 'nearly-there'],
    [80, 'stop-here'],
    [65, 'stop-here'],
    [64.999, 'too-far'],
    [140.747, 'go-on'],
    [140.748, 'read-again'],
  ])('R-RED from 125 µm on the bench, %s µm is %s', (um, advice) => {
    expect(guided({ steps: [step(um)] }).advice).toBe(advice)
  })

  it('R-HALF the aim is the half of the band in which the bench clearance lies in its class of 110 to 140 µm', () => {
    const sixOnTheBench = (um: number) => guided({ bench: both(um, 3) }).window
    expect(sixOnTheBench(125)).toMatchObject({ half: 'either', aim: { minUm: 45, maxUm: 60, middleUm: 52.5 } })
    expect(sixOnTheBench(118)).toMatchObject({ half: 'lower', aim: { minUm: 45, maxUm: 52.5, middleUm: 48.75 } })
    expect(sixOnTheBench(135)).toMatchObject({ half: 'upper', aim: { minUm: 52.5, maxUm: 60, middleUm: 56.25 } })
  })

  it('R-RES the aim keeps clear of the residual minimum by the uncertainty of the gauge', () => {
    // six readings: U of the mounted clearance 2 · 3.8112 = 7.622 µm; 108 − 50 − 7.622 = 50.378 µm may be taken out
    expect(guided({ bench: both(108, 3) }).window).toMatchObject({
      nearUm: 45,
      farUm: 58,
      farBy: 'residual',
      aim: { minUm: 45, maxUm: 50.378 },
      bottomUm: 50,
      topUm: 63,
    })
  })

  it('what is left is told to the near edge, to the aim and to the far edge', () => {
    expect(guided({ steps: [step(105)] }).left).toEqual({ nearUm: 25, aimUm: 32.5, farUm: 40 })
    expect(guided({ steps: [step(70)] }).left).toEqual({ nearUm: -10, aimUm: -2.5, farUm: 5 })
  })

  it('R-MEAN the reduction is told for the mean and for each row by its own bench reading', () => {
    const rowsApart = (a: number, b: number): RowReading[] => [
      { row: 'A', um: a },
      { row: 'B', um: b },
    ]
    const result = guided({ bench: rowsApart(120, 130), steps: [{ readings: rowsApart(85, 92) }] })
    expect(result.now).toMatchObject({ reductionUm: 36.5, rowReductionUm: { A: 35, B: 38 } })
  })

  it('R-RATIO the travel still expected comes from the band’s source: 0.70/45 and 0.90/60 are 15.556 and 15', () => {
    const { travel } = guided({ steps: [step(105)], pitchMm: 2 })
    expect(travel.ratio.from).toBe('band-source')
    expect([travel.ratio.min, travel.ratio.max]).toEqual([15, expect.closeTo(15.5556, 3)])
    // 25 µm to the near edge: 0.375 to 0.389 mm, 67.5 to 70.02 degrees of a nut with 2 mm pitch
    expect(travel.toNear).toMatchObject({ minMm: 0.375, maxMm: 0.389 })
    expect(travel.toNear.angleDeg).toEqual({ min: expect.closeTo(67.5, 9), max: expect.closeTo(70.02, 9) })
  })

  it('R-RATIO once two steps tell it, this mount’s own ratio is taken, free of the zero point', () => {
    // 0.50 mm for 32 µm, u of the difference 7.873: 500/39.873 = 12.540, 500/24.127 = 20.72 but steel allows 20
    const { travel } = guided({ steps: [step(115, { travelMm: 0.2 }), step(83, { travelMm: 0.7 })] })
    expect(travel.ratio.from).toBe('this-mount')
    expect([travel.ratio.min, travel.ratio.max]).toEqual([expect.closeTo(12.54, 3), 20])
  })

  it('an angle stands for the travel by the pitch of the nut: 72° of 2 mm is 0.4 mm', () => {
    const result = guided({ pitchMm: 2, steps: [step(99, { nutAngleDeg: 72 })] })
    expect(result.now?.travelMm).toBeCloseTo(0.4, 12)
    expect(result.travel.check).toMatchObject({ verdict: 'plausible', ratio: 15.385 })
    expect(guided({ steps: [step(99, { nutAngleDeg: 72 })] }).now?.travelMm).toBeNull()
  })

  it('R-RATIO a zero point taken too early is told apart from a wrong reading', () => {
    const early = guided({ steps: [step(111, { travelMm: 1.1 }), step(85, { travelMm: 1.5 })] })
    expect(early.travel).toMatchObject({ zero: 'too-early', check: { verdict: 'too-high', ratio: 37.5 } })
    expect(guided({ steps: [step(85, { travelMm: 1.5 })] }).travel.zero).toBe('not-told')
    expect(codes(early)).toContain('travel-does-not-fit')
  })

  it('the stacks to try next are thinner than the clearance now and end at the aim', () => {
    const stacks = stacksOf([30, 40, 50, 60, 70, 80, 90, 100])
    const result = guided({ stacks, steps: [step(100)] })
    expect(result.nextStacks.map(({ totalUm }) => totalUm)).toEqual([90, 80, 70])
    expect(result.feelers).toMatchObject({ goes: { totalUm: 70 }, stops: { totalUm: 80 } })
    expect(guided({ stacks: stacksOf([50, 100], 1) }).feelers).toBeNull()
    expect(codes(guided({ stacks: stacksOf([50, 100], 1) }))).toContain('blades-too-coarse')
  })

  it('R-U by the proven rule the window is a guard further in: 150 mm bore, band 75 to 100, U 10.779 of six readings', () => {
    const settings = { reductionRule: 'proven' } as const
    const bore = { boreMm: 150 }
    const { window } = guided({ bench: both(205, 3), steps: [{ readings: both(120, 3) }], settings }, bore)
    expect([window.nearUm, window.farUm, window.provable]).toEqual([
      expect.closeTo(85.78, 2),
      expect.closeTo(89.22, 2),
      true,
    ])
  })

  it('R-TAB a mount inside its band is locked forward to the next slot', () => {
    expect(guided({ steps: [step(70)] }).sentence).toContain('forward to the next slot')
  })

  it('lengths are said in the wanted unit', () => {
    expect(guided({ steps: [step(101)] }).sentence).toContain('21 µm')
    expect(guided({ steps: [step(101)], unit: 'mm' }).sentence).toContain('0.021 mm')
    expect(guided({ steps: [step(99.6)], unit: 'thou' }).sentence).toContain('0.8 thou')
  })
})

describe('warnings of a drive-up', () => {
  it.each([
    ['rows-differ', { steps: [{ readings: [...both(80).slice(0, 1), { row: 'B' as const, um: 105 }] }] }],
    ['bench-rows-differ', { bench: [...both(115).slice(0, 1), { row: 'B' as const, um: 140 }] }],
    ['row-past-far-edge', { steps: [{ readings: [{ row: 'A' as const, um: 60 }, ...both(75).slice(1)] }] }],
    ['no-residual-minimum', { residualMinimum: null }],
    ['least-clearance-before-band', { bench: both(94) }],
    ['residual-not-provable', { bench: both(104) }],
    ['band-not-provable', {}],
    ['less-than-before', { steps: [step(90), step(110)] }],
    ['zero-not-verified', { travelTrusted: false, steps: [step(105, { travelMm: 0.3 })] }],
    ['travel-does-not-fit', { steps: [step(75, { travelMm: 0.4 })] }],
    ['bench-outside-class', { bench: both(108) }],
  ] as const)('%s is said when it is so, and not otherwise', (code, change) => {
    expect(codes(guided(change))).toContain(code)
    const wide = { minUm: 40, maxUm: 90 }
    const good = { bench: both(125, 3), steps: [{ readings: both(75, 3), travelMm: 0.76 }] }
    expect(codes(guided(good, { ownBand: wide, ownResidualMinUm: 20 }))).toEqual([])
  })

  it('no room for the band stops the work before it begins', () => {
    const result = guided({ bench: both(94) })
    expect(result).toMatchObject({ advice: 'stop-here', reason: 'no-room', window: { aim: null } })
    expect(result.sentence).toContain('Don’t start')
  })
})

describe('states that cannot be guided', () => {
  it.each([
    ['by-feel', { byFeel: true }],
    ['no-band', { band: null }],
  ] as const)('%s has no guidance', (reason, change) => {
    expect(driveUpGuidance(input(change))).toMatchObject({ kind: 'no-guidance', reason })
  })

  it('a cylindrical bore has no guidance', () => {
    const bearing = { boreMm: 100, taper: null, clearanceClass: 'C3' } as const
    expect(driveUpGuidance(input({ bearing }))).toMatchObject({ kind: 'no-guidance', reason: 'no-taper' })
  })

  it('a row that was not read, on the bench or in the newest step, comes first', () => {
    const rowA = both(125).slice(0, 1)
    expect(driveUpGuidance(input({ bench: rowA }))).toMatchObject({ kind: 'read-first', where: 'bench', row: 'B' })
    const half = driveUpGuidance(input({ steps: [step(100), { readings: rowA }] }))
    expect(half).toMatchObject({ kind: 'read-first', where: 'step', row: 'B' })
  })

  it('numbers outside the trade are refused', () => {
    expect(() => guided({ steps: [step(-1)] })).toThrow(InputError)
    expect(() => guided({ steps: [step(100, { travelMm: 51 })] })).toThrow(InputError)
    expect(() => guided({ steps: [step(100, { nutAngleDeg: Number.NaN })] })).toThrow(InputError)
  })
})

const um = (min: number, max: number) => fc.integer({ min: min * 1000, max: max * 1000 }).map((nm) => nm / 1000)
const rules = fc.record({
  reductionRule: fc.constantFrom('simple' as const, 'proven' as const),
  residualRule: fc.constantFrom('simple' as const, 'proven' as const),
  guardFactor: fc.constantFrom(1.65, 2),
})
const bores = fc.constantFrom(28, 65, 100, 150, 320)
const classes = fc.constantFrom('CN' as const, 'C3' as const, 'C4' as const, 'C5' as const)
const place = fc.record({ boreMm: bores, clearanceClass: classes, times: fc.integer({ min: 1, max: 4 }) })

describe('guidance in every state', () => {
  it('a larger reduction never gives an earlier advice', () => {
    fc.assert(
      fc.property(
        place,
        rules,
        um(20, 400),
        fc.array(um(0, 400), { maxLength: 3 }),
        um(0, 400),
        um(0, 400),
        (at, settings, bench, earlier, one, other) => {
          const rank = (mounted: number): number => {
            const steps = [...earlier, mounted].map((value) => ({ readings: both(value, at.times) }))
            const { advice } = guided({ bench: both(bench, at.times), steps, settings }, at)
            return driveUpAdvices.indexOf(advice)
          }
          expect(rank(Math.min(one, other))).toBeGreaterThanOrEqual(rank(Math.max(one, other)))
        },
      ),
      { numRuns: 1000 },
    )
  })

  it('the advice agrees with the verdict of judgeMount, by either rule', () => {
    fc.assert(
      fc.property(place, rules, um(20, 400), um(0, 250), (at, settings, bench, reduced) => {
        const mounted = Math.max(0, bench - reduced)
        const steps = [{ readings: both(mounted, at.times) }]
        const asked = input({ bench: both(bench, at.times), steps, settings }, at)
        const result = driveUpGuidance(asked) as DriveUpGuided
        const judged = judgeMount({
          bearing: asked.bearing,
          before: asked.bench,
          after: both(mounted, at.times),
          band: asked.band,
          residualMinimum: asked.residualMinimum,
          settings,
        }) as MountJudgement
        expect(result.verdict?.verdict).toBe(judged.reduction.verdict)
        expect(result.residual?.verdict).toBe(judged.residual.verdict)
        expect(allowed(judged, result.window.noRoom)).toContain(result.advice)
      }),
      { numRuns: 1000 },
    )
  })

  it('at the very edges of the band the advice changes with the verdict', () => {
    fc.assert(
      fc.property(bores, fc.constantFrom(-0.001, 0, 0.001), fc.boolean(), (boreMm, beside, far) => {
        const { minUm, maxUm } = input({}, { boreMm }).band ?? { minUm: 0, maxUm: 0 }
        const reduced = (far ? maxUm : minUm) + beside
        const result = guided({ bench: both(600), steps: [step(600 - reduced)], residualMinimum: null }, { boreMm })
        const inside = reduced >= minUm && reduced <= maxUm
        expect(result.advice === 'stop-here').toBe(inside)
        expect(result.advice === 'too-far').toBe(reduced > maxUm)
      }),
    )
  })

  it('nobody is told to turn the nut the other way, all numbers are finite, and every state has one advice', () => {
    fc.assert(
      fc.property(
        place,
        rules,
        um(20, 400),
        fc.array(fc.tuple(um(0, 400), fc.option(um(0, 5))), { maxLength: 4 }),
        fc.constantFrom('mm', 'um', 'in', 'thou'),
        (at, settings, bench, taken, unit) => {
          const steps = taken.map(([value, travelMm]) => ({ readings: both(value, at.times), travelMm }))
          const stacks = stacksOf([30, 50, 70, 100, 150])
          const result = guided(
            { bench: both(bench, at.times), steps, settings, stacks, unit: unit as 'mm', pitchMm: 2 },
            at,
          )
          const said = [result.sentence, ...result.cautions].join(' ')
          expect(said).not.toMatch(/\b(back|backwards?|loosen|slacken|unscrew|undo|reverse)\b/i)
          expect(driveUpAdvices).toContain(result.advice)
          expect(numbersIn(result).every(Number.isFinite)).toBe(true)
        },
      ),
      { numRuns: 500 },
    )
  })

  it('the stop window, as told by clearance, is where a mount is inside and leaves its residual minimum', () => {
    fc.assert(
      fc.property(place, um(60, 400), um(0, 1), (at, bench, part) => {
        const { window } = guided({ bench: both(bench, at.times) }, at)
        const mounted = window.bottomUm + (window.topUm - window.bottomUm) * part
        const settings = { residualRule: 'simple' } as const
        const { advice } = guided({ bench: both(bench, at.times), steps: [step(mounted)], settings }, at)
        expect(window.noRoom || advice === 'stop-here').toBe(true)
      }),
    )
  })
})

/** The advices that a verdict leaves open. */
function allowed({ reduction, residual }: MountJudgement, noRoom: boolean): string[] {
  if (reduction.verdict === 'over' || residual.verdict === 'too-small') return ['too-far']
  if (noRoom) return ['stop-here', 'read-again']
  if (reduction.verdict === 'inside') return ['stop-here']
  return reduction.verdict === 'under' ? ['go-on', 'nearly-there'] : ['nearly-there', 'go-on', 'stop-here']
}

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : []
}
