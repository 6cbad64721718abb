import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { aBearingType, aMakerChart, aMakerChartBand, type BearingTypeRow } from '../../seeds/builders/catalogue-rows.ts'
import type { PositionRow } from '../../seeds/builders/position-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aBearing, aMount, aSpot, insert, insideReadings, overReadings, typedReadings } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let manager: SiteAgent
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  manager = await service.signIn(service.alpha.people.manager, 'alpha')
})

interface Trial {
  readonly position?: Partial<PositionRow>
  readonly type?: Partial<BearingTypeRow>
  readonly mount?: Record<string, unknown>
}

/** Signs a mount at a position of its own and answers what it was judged to be. */
async function judged({ position = {}, type, mount = {} }: Trial) {
  const { alpha, owner } = service
  const row = type && aBearingType({ siteId: alpha.siteId, designation: `Trial ${randomUUID()}`, ...type })
  if (row) await insert(owner, alpha.siteId, 'bearing_type', [row])
  const bearingTypeId = row?.id ?? alpha.bearingTypeId
  const { positionId } = await aSpot(service, { position: { bearingTypeId, ...position } })
  const reason = { outOfBandReason: 'Left so on purpose' }
  const body = aMount(alpha, { positionId, bearing: aBearing(alpha, { bearingTypeId }), ...reason, ...mount })
  const reply = await technician.post('/mount-records', body)
  expect({ status: reply.status, detail: reply.body.detail }).toEqual({ status: 201, detail: undefined })
  return reply.body.judgement
}

/** One reading in each row, before and after, in µm. */
function readingsUm(benchUm: number, mountedUm: number) {
  const [bench, mounted] = [
    { value: `${benchUm}`, unit: 'um' },
    { value: `${mountedUm}`, unit: 'um' },
  ]
  return typedReadings({ benchA: [bench], benchB: [bench], mountedA: [mounted], mountedB: [mounted] })
}

async function withSettings(settings: object, work: () => Promise<void>): Promise<void> {
  await manager.patch('', { settings }).expect(200)
  try {
    await work()
  } finally {
    await manager.patch('', { settings: {} }).expect(200)
  }
}

function checkOf(judgement: { checks: { rule: string; outcome: string }[] }, rule: string): string | undefined {
  return judgement.checks.find((check) => check.rule === rule)?.outcome
}

describe('the verdict of a mount', () => {
  // 22220: bore 100 mm, guide row over 80 up to 100 mm: 45 to 60 µm, residual minimum of C3 50 µm
  it.each([
    [44.999, 'under'],
    [45, 'inside'],
    [60, 'inside'],
    [60.001, 'over'],
  ])('at a reduction of %d µm is %s', async (reductionUm, verdict) => {
    const judgement = await judged({ mount: { readings: readingsUm(135, 135 - reductionUm) } })
    expect(judgement).toMatchObject({ reductionUm, verdict })
  })

  it('weighs the rows alike, however many readings each has', async () => {
    const readings = typedReadings({
      benchA: ['0.13', '0.13', '0.13'],
      benchB: ['0.12'],
      mountedA: ['0.07'],
      mountedB: ['0.07'],
    })
    expect(await judged({ mount: { readings } })).toMatchObject({ benchMeanUm: 125, reductionUm: 55 })
  })

  it('keeps the uncertainty: of 2 and 1 readings in the rows, before and after, U is 14.09 µm', async () => {
    // u² of a mean = 2.3² + 1² + (2.9² + 4² + 5²) (1/2 + 1/1) / 4 = 24.81875; U = 2 √(2 · 24.81875)
    const { expandedUncertaintyUm } = await judged({ mount: { readings: insideReadings } })
    expect(expandedUncertaintyUm).toBeCloseTo(2 * Math.sqrt(2 * 24.818_75), 3)
  })

  it('reads thou and inches exactly', async () => {
    // 5 thou = 127 µm, 2.75 thou = 69.85 µm
    const [bench, mounted] = [
      { value: '5', unit: 'thou' },
      { value: '2,75', unit: 'thou' },
    ]
    const readings = typedReadings({ benchA: [bench], benchB: [bench], mountedA: [mounted], mountedB: [mounted] })
    expect(await judged({ mount: { readings } })).toMatchObject({
      benchMeanUm: 127,
      mountedMeanUm: 69.85,
      reductionUm: 57.15,
    })
  })

  it('takes an unlikely reading that was confirmed', async () => {
    const worn = { value: '0.5', confirmed: true }
    const readings = typedReadings({ benchA: [worn], benchB: [worn], mountedA: ['0.07'], mountedB: ['0.07'] })
    expect(await judged({ mount: { readings } })).toMatchObject({ benchMeanUm: 500, verdict: 'over' })
  })

  it('says that the mounted clearance is too small, though the reduction is inside', async () => {
    // 92 - 38 = 54 µm; 38 µm is below 50 - U = 50 - 11.1 µm
    const judgement = await judged({ mount: { readings: readingsUm(92, 38) } })
    expect(judgement).toMatchObject({ verdict: 'inside', residual: 'too-small', residualMinUm: 50 })
    expect(checkOf(judgement, 'R-RES')).toBe('fail')
    // and 92 µm on the bench is not C3, which is 110 to 140 µm
    expect(checkOf(judgement, 'R-CL2')).toBe('fail')
  })

  it.each([
    [0.8, 'pass'],
    [0.4, 'warning'],
    [1.3, 'warning'],
  ])('compares a drive-up of %d mm with the reduction of 55 µm: %s', async (driveUpMm, outcome) => {
    expect(checkOf(await judged({ mount: { driveUpMm } }), 'R-RATIO')).toBe(outcome)
  })

  it('warns where the rows differ by more than 10 µm and 15 %', async () => {
    const readings = typedReadings({ benchA: ['0.14'], benchB: ['0.11'], mountedA: ['0.07'], mountedB: ['0.07'] })
    expect(checkOf(await judged({ mount: { readings } }), 'R-ROW')).toBe('warning')
  })
})

describe('the band', () => {
  it('follows the bore: 110 mm is judged by over 100 up to 120 mm, 50 to 70 µm', async () => {
    const judgement = await judged({ type: { basicCode: '22222' }, mount: { readings: readingsUm(150, 85) } })
    expect(judgement).toMatchObject({
      verdict: 'inside',
      band: { minUm: 50, maxUm: 70, source: { kind: 'generic-guide' } },
    })
  })

  it("is the maker's chart's where the position has one, with its document, edition and row", async () => {
    const { siteId } = service.alpha
    const chart = aMakerChart({ siteId, maker: 'Tarnbeck', document: 'Mounting card 7', edition: '2025' })
    await insert(service.owner, siteId, 'maker_chart', [chart])
    const limits = { reductionMinNm: 56_000, reductionMaxNm: 64_000, residualMinC3Nm: 58_000 }
    await insert(service.owner, siteId, 'maker_chart_row', [
      aMakerChartBand({ siteId, chartId: chart.id, ...limits }),
      aMakerChartBand({ siteId, chartId: chart.id, taper: '1:30', reductionMinNm: 10_000, reductionMaxNm: 20_000 }),
    ])
    const judgement = await judged({ position: { makerChartId: chart.id } })
    expect(judgement).toMatchObject({
      verdict: 'under',
      residualMinUm: 58,
      band: {
        minUm: 56,
        maxUm: 64,
        source: { kind: 'maker-chart', title: 'Tarnbeck, Mounting card 7', edition: '2025', row: '80 < d ≤ 100 mm' },
      },
    })
  })

  it("is the position's own before any chart", async () => {
    const { siteId } = service.alpha
    const chart = aMakerChart({ siteId })
    await insert(service.owner, siteId, 'maker_chart', [chart])
    await insert(service.owner, siteId, 'maker_chart_row', [aMakerChartBand({ siteId, chartId: chart.id })])
    const own = {
      ownReductionMinNm: 30_000,
      ownReductionMaxNm: 50_000,
      ownBandSource: 'Engineer, hollow shaft',
      ownResidualMinNm: 65_000,
    }
    const judgement = await judged({ position: { makerChartId: chart.id, ...own } })
    expect(judgement).toMatchObject({
      verdict: 'over',
      residualMinUm: 65,
      band: { minUm: 30, maxUm: 50, source: { kind: 'position', title: 'Engineer, hollow shaft' } },
    })
  })

  it('is the guide, with a caution, where the chart has no row for the bore', async () => {
    const { siteId } = service.alpha
    const chart = aMakerChart({ siteId, maker: 'Tarnbeck', document: 'Small bores' })
    await insert(service.owner, siteId, 'maker_chart', [chart])
    await insert(service.owner, siteId, 'maker_chart_row', [
      aMakerChartBand({ siteId, chartId: chart.id, overMm: 40, inclMm: 80 }),
    ])
    const judgement = await judged({ position: { makerChartId: chart.id } })
    expect(judgement.band).toMatchObject({ minUm: 45, maxUm: 60, source: { kind: 'generic-guide' } })
    expect(judgement.cautions.join(' ')).toContain('Small bores')
  })

  it('takes the residual minimum of the class that is mounted', async () => {
    const judgement = await judged({ type: { clearanceClass: 'CN' }, mount: { readings: readingsUm(100, 47) } })
    expect(judgement).toMatchObject({ verdict: 'inside', residualMinUm: 35, residual: 'enough' })
  })
})

describe('no verdict in numbers', () => {
  it('is given for a mount by feel, which names its person', async () => {
    const mount = { method: 'by-feel', byFeelPerson: 'Ada Brunn', readings: [], outOfBandReason: null }
    expect(await judged({ mount })).toMatchObject({ verdict: null, residual: null, band: null })
  })

  it('is given for a seat without a taper, and its readings are not asked for', async () => {
    const trial = { position: { seat: 'cylindrical' as const }, type: { taper: null } }
    expect(await judged({ ...trial, mount: { readings: [], outOfBandReason: null } })).toMatchObject({ verdict: null })
    expect(await judged({ ...trial, mount: { outOfBandReason: null } })).toMatchObject({
      verdict: null,
      benchMeanUm: 125,
      reductionUm: 55,
    })
  })

  it('is given for a self-aligning ball bearing: the guide is not made for it', async () => {
    const type = {
      kind: 'self-aligning-ball',
      basicCode: '1220',
      boreMm: 100,
      outsideDiameterMm: 180,
      widthMm: 34,
    } as const
    const mount = { readings: [], outOfBandReason: null }
    expect(await judged({ type, mount })).toMatchObject({ verdict: null, band: null })
  })
})

describe('a bearing of another kind', () => {
  it('is judged by a band of its own position, without the class tables of spherical roller bearings', async () => {
    const type = { kind: 'cylindrical-roller', basicCode: 'NU1020', series: 'NU10', taper: null } as const
    const dimensions = { boreMm: 100, outsideDiameterMm: 150, widthMm: 24 }
    const own = { ownReductionMinNm: 20_000, ownReductionMaxNm: 40_000, ownBandSource: 'Engineer' }
    const judgement = await judged({
      type: { ...type, ...dimensions },
      position: { seat: 'cylindrical', ...own },
      mount: { readings: readingsUm(120, 90) },
    })
    expect(judgement).toMatchObject({ verdict: 'inside', reductionUm: 30, residual: 'no-minimum' })
    expect(checkOf(judgement, 'R-CL2')).toBe('not-done')
  })
})

describe('not proven', () => {
  it('is a mount by drive-up alone, and it is flagged', async () => {
    const { positionId } = await aSpot(service)
    const drive = { method: 'drive-up', driveUpMm: 0.8, readings: [], outOfBandReason: 'No room for a feeler' }
    const reply = await technician.post('/mount-records', aMount(service.alpha, { positionId, ...drive })).expect(201)
    expect(reply.body.judgement).toMatchObject({ verdict: 'not-proven', reductionUm: null, band: { minUm: 45 } })
    const flags = await technician.get(`/flags?positionId=${positionId}`).expect(200)
    expect(flags.body.items.map((flag: { kind: string }) => flag.kind)).toContain('mount-not-proven')
  })

  it('is a reduction for which no source has a band', async () => {
    const type = { basicCode: '21304', boreMm: 20, outsideDiameterMm: 52, widthMm: 15 }
    const judgement = await judged({ type, mount: { readings: readingsUm(40, 25) } })
    expect(judgement).toMatchObject({ verdict: 'not-proven', reductionUm: 15, band: null })
  })

  it('is a reduction inside by less than U where the site accepts the proven only', async () => {
    await withSettings({ reductionAcceptance: 'proven' }, async () => {
      expect(await judged({ mount: { readings: readingsUm(135, 80) } })).toMatchObject({
        reductionUm: 55,
        verdict: 'not-proven',
      })
      // U = 15.7 µm for one reading a row: 60 + 15.7 is 75.7
      expect(await judged({ mount: { readings: readingsUm(150, 74) } })).toMatchObject({
        reductionUm: 76,
        verdict: 'over',
      })
    })
  })
})

describe('the settings of the site', () => {
  it('scale the uncertainty by what the site found for one reading, and by its factor', async () => {
    await withSettings({ readingStandardUncertaintyUm: 15, coverageFactor: 3 }, async () => {
      const { expandedUncertaintyUm } = await judged({ mount: { readings: readingsUm(135, 80) } })
      // usual: one reading u² = 55.7; mean of one a row u² = 6.29 + 49.41 / 2 = 30.995
      expect(expandedUncertaintyUm).toBeCloseTo(3 * Math.sqrt(2 * 30.995) * (15 / Math.sqrt(55.7)), 2)
    })
  })

  it('accept a residual as read where the site says so', async () => {
    const mount = { readings: readingsUm(108, 53) }
    expect(await judged({ mount })).toMatchObject({ residual: 'not-proven' })
    await withSettings({ residualAcceptance: 'simple' }, async () => {
      expect(await judged({ mount })).toMatchObject({ residual: 'enough' })
    })
  })

  it('of later leave an old verdict as it is', async () => {
    const { positionId } = await aSpot(service)
    const body = aMount(service.alpha, { positionId, readings: overReadings, outOfBandReason: 'Went in hard' })
    const before = (await technician.post('/mount-records', body).expect(201)).body.judgement
    await withSettings({ reductionAcceptance: 'proven', coverageFactor: 4 }, async () => {
      expect((await technician.get(`/mount-records/${body.id}`)).body.judgement).toEqual(before)
    })
  })
})
