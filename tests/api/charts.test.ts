import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { aMakerChart, aMakerChartBand } from '../../seeds/builders/catalogue-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aMount, aSpot, expectRefused, insert } from './shaft-work.ts'

const service = useTestApp()
let engineer: SiteAgent
let technician: SiteAgent
beforeAll(async () => {
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
})

interface Row {
  id: string
  overMm: number
  inclMm: number
  [field: string]: unknown
}

const row = (overMm: number, inclMm: number, over: Record<string, unknown> = {}): Row => ({
  id: randomUUID(),
  overMm,
  inclMm,
  taper: '1:12',
  reductionMinUm: 40,
  reductionMaxUm: 55,
  residualMinC3Um: 48,
  ...over,
})
const chart = (rows: Row[], over: Record<string, unknown> = {}) => ({
  id: randomUUID(),
  maker: 'Tarnbeck',
  document: `Sheet ${randomUUID()}`,
  edition: '2',
  page: '7',
  rows,
  ...over,
})

describe("a maker's chart", () => {
  it('gives the band of the positions that name it', async () => {
    const made = await engineer
      .post('/maker-charts', chart([row(80, 120), row(80, 120, { taper: '1:30' })]))
      .expect(201)
    expect(made.body.rows).toHaveLength(2)
    const position = (await engineer.get(`/positions/${service.alpha.locating.id}`)).body
    await engineer.patch(`/positions/${position.id}`, { makerChartId: made.body.id }, position.version).expect(200)
    const overview = (await engineer.get(`/positions/${position.id}/overview`)).body
    expect(overview.band).toMatchObject({ minUm: 40, maxUm: 55, source: { kind: 'maker-chart' } })
    expect(overview.residualMinUm).toBe(48)
  })

  it('is refused with overlapping rows, both named', async () => {
    const reply = await engineer.post('/maker-charts', chart([row(100, 120), row(50, 80), row(75, 100)])).expect(422)
    expect(reply.body.detail).toMatch(/Row 2 \(50 to 80 mm\) overlaps row 3 \(75 to 100 mm\)/)
    expect(reply.body.fields.map((field: { path: string }) => field.path)).toEqual(['rows.1.inclMm', 'rows.2.overMm'])
  })

  it('takes rows that meet without overlap, and replaces them all on a change', async () => {
    const made = await engineer.post('/maker-charts', chart([row(80, 100), row(50, 80)])).expect(201)
    expect(made.body.rows.map((line: { overMm: number }) => line.overMm)).toEqual([50, 80])
    const changed = await engineer
      .patch(`/maker-charts/${made.body.id}`, { edition: '3', rows: [row(40, 65)] }, made.body.version)
      .expect(200)
    expect(changed.body).toMatchObject({ edition: '3', rows: [{ overMm: 40, inclMm: 65 }] })
    await engineer.patch(`/maker-charts/${made.body.id}`, { edition: '4' }, made.body.version).expect(412)
  })

  it('is refused with a row that runs backwards', async () => {
    const reply = await engineer.post('/maker-charts', chart([row(100, 80)])).expect(422)
    expect(reply.body.fields[0].path).toBe('rows.0.inclMm')
  })

  it.each([
    ['reductionMinUm', 0.0001, 422],
    ['reductionMaxUm', 40.0001, 422],
    ['residualMinC3Um', -5, 400],
  ])('is refused with a limit that cannot be: %s %d µm', async (field, um, status) => {
    const limits = { ...row(80, 100), reductionMinUm: 40, [field]: um }
    const reply = await engineer.post('/maker-charts', chart([limits]))
    expect([reply.status, reply.body.fields[0].path]).toEqual([status, `rows.0.${field}`])
  })
})

describe('rows by clearance class', () => {
  it('stand beside a row for all classes, and are chosen before it', async () => {
    const rows = [row(80, 120), row(80, 120, { clearanceClass: 'C3', reductionMinUm: 50, reductionMaxUm: 62 })]
    const made = await engineer.post('/maker-charts', chart(rows)).expect(201)
    expect(made.body.rows.map((line: Row) => line['clearanceClass'])).toEqual([null, 'C3'])
    const { positionId } = await aSpot(service, { position: { makerChartId: made.body.id } })
    const { band } = (await engineer.get(`/positions/${positionId}/overview`)).body
    expect(band).toMatchObject({ minUm: 50, source: { edition: '2', page: '7', row: '80 < d ≤ 120 mm, C3' } })
  })

  it('are refused where two of the same class overlap', async () => {
    const forC3 = { clearanceClass: 'C3' }
    const body = chart([row(80, 100, forC3), row(60, 120), row(90, 120, forC3)])
    const { detail } = await expectRefused(
      engineer.post('/maker-charts', body),
      422,
      'not-allowed-here',
      'rows.2.overMm',
    )
    expect(detail).toContain('Row 1 (80 to 100 mm) overlaps row 3 (90 to 120 mm)')
  })

  it.each([
    [null, null, true],
    ['C3', 'C3', true],
    [null, 'C3', false],
  ] as const)('of classes %s and %s over the same bores are refused by the table: %s', async (one, other, refused) => {
    const { siteId } = service.alpha
    const head = aMakerChart({ siteId })
    await insert(service.owner, siteId, 'maker_chart', [head])
    const rows = [one, other].map((clearanceClass) => aMakerChartBand({ siteId, chartId: head.id, clearanceClass }))
    const outcome = await insert(service.owner, siteId, 'maker_chart_row', rows).then(
      () => 'taken',
      (error: Error) => error.message,
    )
    expect(/maker_chart_row_overlap/.test(outcome)).toBe(refused)
  })

  it('are refused with every fault of every row', async () => {
    const backwards = row(100, 80, { residualMinCnUm: 60, driveUpMinMm: 0.7 })
    const reply = await engineer.post('/maker-charts', chart([row(50, 80), backwards])).expect(422)
    expect(reply.body.fields.map((field: { path: string }) => field.path)).toEqual([
      'rows.1.inclMm',
      'rows.1.residualMinC3Um',
      'rows.1.driveUpMaxMm',
    ])
    expect(reply.body.detail).toMatch(/^Row 2: .*3 faults in all/)
  })
})

describe('a new edition of a chart', () => {
  /** A chart with two positions that go by it, one of which has a signed mount, and its next edition. */
  async function twoEditions() {
    const old = (await engineer.post('/maker-charts', chart([row(80, 120)])).expect(201)).body
    const spots = [await aSpot(service, { position: { makerChartId: old.id } })]
    const own = { ownReductionMinNm: 30_000, ownReductionMaxNm: 50_000, ownBandSource: 'Engineer' }
    spots.push(await aSpot(service, { position: { makerChartId: old.id, ...own } }))
    const record = (
      await technician.post('/mount-records', aMount(service.alpha, { positionId: spots[0]?.positionId })).expect(201)
    ).body
    const head = { document: old.document, edition: '3', page: '9', replacesId: old.id }
    const next = (
      await engineer
        .post('/maker-charts', chart([row(80, 120, { reductionMinUm: 57, reductionMaxUm: 70 })], head))
        .expect(201)
    ).body
    return { old, next, record, spots }
  }

  it('takes over all positions of the old one in one act; those whose band changes are shown before', async () => {
    const { old, next, spots } = await twoEditions()
    const shown = (await engineer.get(`/maker-charts/${next.id}/takeover`).expect(200)).body
    expect(shown.from).toEqual({ id: old.id, document: old.document, edition: '2' })
    const byId = Object.fromEntries(shown.positions.map((position: { id: string }) => [position.id, position]))
    expect(byId[spots[0]?.positionId ?? '']).toMatchObject({
      changes: true,
      before: { minUm: 40, maxUm: 55 },
      after: { minUm: 57, maxUm: 70, source: { edition: '3', page: '9' } },
    })
    expect(byId[spots[1]?.positionId ?? '']).toMatchObject({ changes: false, before: { minUm: 30 } })
    const moved = await engineer.postIfMatch(`/maker-charts/${next.id}/takeover`, { positionCount: 2 }, 1).expect(200)
    expect(moved.body).toMatchObject({ id: next.id, positionCount: 2 })
    expect((await engineer.get(`/maker-charts/${old.id}`)).body.positionCount).toBe(0)
    const { band } = (await engineer.get(`/positions/${spots[0]?.positionId}/overview`)).body
    expect(band).toMatchObject({ minUm: 57, maxUm: 70 })
  })

  it('leaves old records as they were: verdict, band, document, edition, page and row', async () => {
    const { next, record } = await twoEditions()
    await engineer.postIfMatch(`/maker-charts/${next.id}/takeover`, { positionCount: 2 }, 1).expect(200)
    const after = (await engineer.get(`/mount-records/${record.id}`).expect(200)).body
    expect(after.judgement).toEqual(record.judgement)
    expect(after.judgement).toMatchObject({
      verdict: 'inside',
      band: { minUm: 40, maxUm: 55, source: { edition: '2', page: '7', row: '80 < d ≤ 120 mm' } },
    })
  })

  it('is refused as a whole where the number of positions is another than was shown', async () => {
    const { old, next } = await twoEditions()
    const path = `/maker-charts/${next.id}/takeover`
    await expectRefused(engineer.postIfMatch(path, { positionCount: 3 }, 1), 412, 'version-stale', 'positionCount')
    await engineer.postIfMatch(path, { positionCount: 2 }, 2).expect(412)
    await technician.postIfMatch(path, { positionCount: 2 }, 1).expect(403)
    expect((await engineer.get(`/maker-charts/${old.id}`)).body.positionCount).toBe(2)
  })

  it('is asked for where a signed record went by the chart: its rows, maker, document and edition stay', async () => {
    const { old, next } = await twoEditions()
    const path = `/maker-charts/${old.id}`
    expect((await engineer.get(path)).body.used).toBe(true)
    expect((await engineer.get(`/maker-charts/${next.id}`)).body.used).toBe(false)
    const changed = [{ ...old.rows[0], reductionMaxUm: 56 }]
    const refused = await expectRefused(engineer.patch(path, { rows: changed }, 1), 422, 'not-allowed-here', 'rows')
    expect(refused.detail).toContain('new edition')
    await expectRefused(engineer.patch(path, { edition: '2a' }, 1), 422, 'not-allowed-here', 'edition')
    const mended = await engineer.patch(path, { edition: '2', page: '7 and 8', rows: old.rows }, 1).expect(200)
    expect(mended.body).toMatchObject({ page: '7 and 8', rows: old.rows })
  })

  it('is none where the chart takes over from no other one, and never of a chart that is not there', async () => {
    const first = (await engineer.post('/maker-charts', chart([row(80, 120)])).expect(201)).body
    await engineer.get(`/maker-charts/${first.id}/takeover`).expect(404)
    const body = chart([row(80, 120)], { replacesId: randomUUID() })
    await expectRefused(engineer.post('/maker-charts', body), 404, 'not-found', 'replacesId')
  })
})
