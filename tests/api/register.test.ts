import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { inSite } from '../../seeds/builders/in-site.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'

const service = useTestApp()
let engineer: SiteAgent
let stores: SiteAgent
beforeAll(async () => {
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
  stores = await service.signIn(service.alpha.people.stores, 'alpha')
})

describe('creating a row', () => {
  it('answers 201 with the row, its defaults and its version as ETag', async () => {
    const id = randomUUID()
    const reply = await engineer.post('/areas', { id, code: 'PIT', name: 'Receiving pits' }).expect(201)
    expect(reply.body).toMatchObject({ id, code: 'PIT', name: 'Receiving pits', walkingOrder: 0, version: 1 })
    expect(reply.headers['etag']).toBe('"1"')
    const read = await engineer.get(`/areas/${id}`).expect(200)
    expect(read.body).toEqual(reply.body)
    expect(read.headers['etag']).toBe('"1"')
  })

  it('answers the first record again when the same request comes twice, whatever the order of its fields', async () => {
    const id = randomUUID()
    const first = await engineer.post('/areas', { id, code: 'DRY', name: 'Dryer' }).expect(201)
    const second = await engineer.post('/areas', { name: 'Dryer', id, code: 'DRY' }).expect(201)
    expect(second.body).toEqual(first.body)
  })

  it('lets one of two equal requests at once make the record, and answers both with it', async () => {
    const body = { id: randomUUID(), code: 'TWIN', name: 'Twin' }
    const replies = await Promise.all([engineer.post('/areas', body), engineer.post('/areas', body)])
    expect(replies.map((reply) => reply.status)).toEqual([201, 201])
    expect(replies[0]?.body).toEqual(replies[1]?.body)
  })

  it('refuses an id that came before with another body, and keeps the first record', async () => {
    const id = randomUUID()
    await engineer.post('/areas', { id, code: 'TWR', name: 'Tower' }).expect(201)
    const reply = await engineer.post('/areas', { id, code: 'TWR', name: 'Other tower' }).expect(409)
    expect(reply.body).toMatchObject({ code: 'id-already-used', fields: [{ path: 'id' }] })
    expect((await engineer.get(`/areas/${id}`)).body.name).toBe('Tower')
  })

  it('refuses an id that stands for a row which no request made', async () => {
    const reply = await engineer.post('/areas', { id: service.alpha.areaId, code: 'NEW', name: 'New' }).expect(409)
    expect(reply.body).toMatchObject({ code: 'id-already-used', fields: [{ path: 'id' }] })
  })

  it('refuses a name that is taken at the site, naming the field', async () => {
    const reply = await engineer
      .post('/machines', {
        id: randomUUID(),
        areaId: service.alpha.areaId,
        tag: service.alpha.machineTag,
        name: 'Belt again',
        kind: 'belt conveyor',
      })
      .expect(409)
    expect(reply.body).toMatchObject({ code: 'name-already-used', fields: [{ path: 'tag' }] })
  })

  it.each([
    ['that is nowhere', () => randomUUID()],
    ['of another site', () => service.beta.areaId],
  ])('answers 404 with the field when it names a record %s', async (_where, areaId) => {
    const machine = { id: randomUUID(), areaId: areaId(), tag: 'X-1', name: 'X', kind: 'fan' }
    const reply = await engineer.post('/machines', machine).expect(404)
    expect(reply.body).toMatchObject({ code: 'not-found', fields: [{ path: 'areaId' }] })
    expect(reply.body.detail).not.toContain('beta')
  })

  it('takes a day as a plain day, whatever the time zone', async () => {
    const bearing = { id: randomUUID(), bearingTypeId: service.alpha.bearingTypeId, packedOn: '2026-01-31' }
    const made = await engineer.post('/bearings', bearing).expect(201)
    expect(made.body).toMatchObject({ packedOn: '2026-01-31', serial: null })
    const listed = await engineer.get('/bearings').expect(200)
    expect(listed.body.items).toContainEqual(made.body)
  })

  it.each(['0999-12-31', '0001-01-01', '0000-01-01'])('refuses %s as a day, naming the field', async (packedOn) => {
    const bearing = { id: randomUUID(), bearingTypeId: service.alpha.bearingTypeId, packedOn }
    const reply = await engineer.post('/bearings', bearing).expect(400)
    expect(reply.body.fields).toEqual([{ path: 'packedOn', message: 'takes a year from 1900 on, in four digits' }])
  })

  it('refuses a second hour meter at a machine in words that fit', async () => {
    const meter = { id: randomUUID(), machineId: service.alpha.machineId, name: 'Second meter' }
    const reply = await engineer.post('/meters', meter).expect(409)
    expect(reply.body.fields[0].path).toBe('machineId')
    expect(reply.body.detail).toMatch(/machine already has an hour meter/)
  })

  it('refuses a ring that is smaller outside than inside', async () => {
    const type = {
      id: randomUUID(),
      designation: 'Odd one',
      basicCode: 'odd',
      series: 'odd',
      kind: 'other',
      boreMm: 100,
      outsideDiameterMm: 90,
      widthMm: 20,
    }
    const reply = await engineer.post('/bearing-types', type).expect(422)
    expect(reply.body.fields[0].path).toBe('outsideDiameterMm')
  })

  it('refuses text with a character that cannot be stored, as a bad request', async () => {
    const reply = await engineer.post('/areas', { id: randomUUID(), code: 'NUL', name: 'a\u0000b' }).expect(400)
    expect(reply.body.code).toBe('request-invalid')
  })
})

describe('changing a row', () => {
  it('changes only what is given, counts the version up and gives it out', async () => {
    const before = (await engineer.get(`/machines/${service.alpha.machineId}`)).body
    const reply = await engineer.patch(`/machines/${before.id}`, { name: 'Belt one' }, before.version).expect(200)
    expect(reply.body).toEqual({
      ...before,
      name: 'Belt one',
      version: before.version + 1,
      updatedAt: reply.body.updatedAt,
    })
    expect(reply.headers['etag']).toBe(`"${before.version + 1}"`)
  })

  it('refuses a stale version with 412 and says what to do; nothing is changed', async () => {
    const before = (await engineer.get(`/areas/${service.alpha.areaId}`)).body
    await engineer.patch(`/areas/${before.id}`, { name: 'Long gallery' }, before.version).expect(200)
    const reply = await engineer.patch(`/areas/${before.id}`, { name: 'Mine' }, before.version).expect(412)
    expect(reply.body.code).toBe('version-stale')
    expect(reply.body.detail).toMatch(/read it again/)
    expect((await engineer.get(`/areas/${before.id}`)).body.name).toBe('Long gallery')
  })

  it('lets one of two changes of the same version at once through', async () => {
    const { id, version } = (await engineer.get(`/greases/${service.alpha.greaseId}`)).body
    const replies = await Promise.all(
      ['KP2K-20', 'KP2N-30'].map((code) => engineer.patch(`/greases/${id}`, { code }, version)),
    )
    expect(replies.map((reply) => reply.status).toSorted((a, b) => a - b)).toEqual([200, 412])
  })

  it.each([
    [undefined, 428, 'if-match-missing'],
    ['3', 400, 'request-invalid'],
    ['*', 400, 'request-invalid'],
  ])('with If-Match %s answers %i', async (ifMatch, status, code) => {
    const request = engineer.patch(`/areas/${service.alpha.areaId}`, { name: 'X' })
    const reply = await (ifMatch === undefined ? request : request.set('if-match', ifMatch))
    expect(reply.status).toBe(status)
    expect(reply.body.code).toBe(code)
  })

  it('refuses a field that the row does not have', async () => {
    const reply = await engineer.patch(`/areas/${service.alpha.areaId}`, { colour: 'red' }, 1).expect(400)
    expect(reply.body.detail).toMatch(/colour/)
  })

  it('answers 404 for a row of another site', async () => {
    const reply = await engineer.patch(`/areas/${service.beta.areaId}`, { name: 'Mine' }, 1)
    expect(reply.status).toBe(404)
  })
})

describe('a position', () => {
  const position = () => service.alpha.locating.id
  async function change(fields: object) {
    const { version } = (await engineer.get(`/positions/${position()}`)).body
    return engineer.patch(`/positions/${position()}`, fields, version)
  }

  it('keeps its own band to the nanometre', async () => {
    const band = {
      ownReductionMinUm: 45.125,
      ownReductionMaxUm: 60.001,
      ownResidualMinUm: 50,
      ownBandSource: 'Sheet 7, engineer',
    }
    expect((await change(band)).body).toMatchObject(band)
    const stored = await inSite(service.owner, service.alpha.siteId, () =>
      service.owner.query('select own_reduction_min_nm, own_reduction_max_nm from position where id = $1', [
        position(),
      ]),
    )
    expect(stored.rows).toEqual([{ own_reduction_min_nm: 45_125, own_reduction_max_nm: 60_001 }])
    const read = await engineer.get(`/positions/${position()}/overview`).expect(200)
    expect(read.body.band).toMatchObject({
      minUm: 45.125,
      maxUm: 60.001,
      source: { kind: 'position', title: 'Sheet 7, engineer' },
    })
    expect(read.body.residualMinUm).toBe(50)
    await change({ ownReductionMinUm: null, ownReductionMaxUm: null, ownResidualMinUm: null, ownBandSource: null })
  })

  it.each([
    [{ ownReductionMinUm: 45 }, ['ownReductionMaxUm', 'ownBandSource']],
    [{ ownReductionMinUm: 45, ownReductionMaxUm: 60 }, ['ownBandSource']],
    [{ ownBandSource: 'Sheet 7' }, ['ownReductionMinUm', 'ownReductionMaxUm']],
    [{ ownReductionMinUm: 60, ownReductionMaxUm: 45, ownBandSource: 'Sheet 7' }, ['ownReductionMaxUm']],
    [{ ownReductionMinUm: 45, ownReductionMaxUm: 45.0001, ownBandSource: 'Sheet 7' }, ['ownReductionMaxUm']],
    [{ ownReductionMinUm: 0.0001, ownReductionMaxUm: 45, ownBandSource: 'Sheet 7' }, ['ownReductionMaxUm']],
  ])('is refused with half a band of its own: %j', async (band, paths) => {
    const reply = await change(band)
    expect(reply.status).toBe(422)
    expect(reply.body.fields.map((field: { path: string }) => field.path)).toEqual(paths)
  })

  it('that stops locating raises the flag of its shaft at once, and clears it when it locates again', async () => {
    await change({ locating: false })
    const open = (await engineer.get('/flags?kind=no-locating')).body.items
    expect(open).toMatchObject([{ kind: 'no-locating', shaftId: service.alpha.shaftId, positionId: null, tag: null }])
    await change({ locating: true })
    expect((await engineer.get('/flags?kind=no-locating')).body.items).toEqual([])
    const cleared = (await engineer.get('/flags?state=cleared')).body.items
    expect(cleared).toMatchObject([{ id: open[0].id, clearedHow: 'position changed' }])
  })

  it('is found by its kit and by its tag', async () => {
    const byKit = await engineer.get(`/positions?kitId=${service.alpha.locating.kitId}`).expect(200)
    expect(byKit.body.items.map((item: { tag: string }) => item.tag)).toEqual([service.alpha.locating.tag])
    const byTag = await engineer.get('/positions?tag=hd-nde').expect(200)
    expect(byTag.body.items.map((item: { id: string }) => item.id)).toEqual([service.alpha.nonLocating.id])
  })
})

describe('an override of the locating rule', () => {
  it('needs a reason in words and clears the flag', async () => {
    const shaftId = service.alpha.shaftId
    const far = (await engineer.get(`/positions/${service.alpha.nonLocating.id}`)).body
    const now = await engineer.patch(`/positions/${far.id}`, { locating: true }, far.version).expect(200)
    expect((await engineer.get('/flags?kind=several-locating')).body.items).toHaveLength(1)
    const shaft = (await engineer.get(`/shafts/${shaftId}`)).body
    await engineer.patch(`/shafts/${shaftId}`, { locatingOverrideReason: 'x' }, shaft.version).expect(422)
    await engineer.patch(`/shafts/${shaftId}`, { locatingOverrideReason: 'Spring loaded' }, shaft.version).expect(200)
    expect((await engineer.get('/flags?kind=several-locating')).body.items).toEqual([])
    await engineer.patch(`/positions/${far.id}`, { locating: false }, now.body.version).expect(200)
  })
})

describe('a kit', () => {
  it('is made with its lines in order, which a change replaces', async () => {
    const { partIds } = service.alpha.locating
    const id = randomUUID()
    const line = (partId: string | undefined, quantity: number) => ({ id: randomUUID(), partId, quantity })
    const lines = [line(partIds.sleeve, 1), line(partIds.nut, 1)]
    const made = await stores.post('/kits', { id, name: 'Spare sleeve set', lines }).expect(201)
    expect(made.body.lines).toMatchObject([
      { lineNumber: 1, kind: 'sleeve', need: 'must', unit: 'pc' },
      { lineNumber: 2, kind: 'nut' },
    ])
    const change = { lines: [line(partIds.washer, 2)] }
    const changed = await stores.patch(`/kits/${id}`, change, made.body.version).expect(200)
    expect(changed.body).toMatchObject({ name: 'Spare sleeve set', lines: [{ kind: 'washer', quantity: 2 }] })
    expect(changed.body.version).toBe(made.body.version + 1)
  })

  it('is refused with a line whose part is not at the site, naming the line', async () => {
    const lines = [
      { id: randomUUID(), partId: service.alpha.locating.partIds.nut, quantity: 1 },
      { id: randomUUID(), partId: service.beta.locating.partIds.nut, quantity: 1 },
    ]
    const reply = await stores.post('/kits', { id: randomUUID(), name: 'Mixed', lines }).expect(404)
    expect(reply.body.fields).toMatchObject([{ path: 'lines.1.partId' }])
    expect((await stores.get('/kits?search=Mixed')).body.items).toEqual([])
  })

  it('tells from a part which positions it fits, by tag', async () => {
    const uses = await stores.get(`/parts/${service.alpha.locating.partIds.sleeve}/positions?limit=1`).expect(200)
    expect(uses.body.items).toMatchObject([{ tag: service.alpha.locating.tag, machineName: 'Belt one' }])
    const rest = await stores.get(
      `/parts/${service.alpha.locating.partIds.sleeve}/positions?limit=1&cursor=${uses.body.nextCursor}`,
    )
    expect(rest.body.items).toMatchObject([{ tag: service.alpha.nonLocating.tag }])
    expect(rest.body.nextCursor).toBeNull()
    await stores.get(`/parts/${randomUUID()}/positions`).expect(404)
  })
})
