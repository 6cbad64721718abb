import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { anArea } from '../../seeds/builders/site-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { countStatements } from '../support/statements.ts'
import { aGun, aRound, aStop } from './round-work.ts'
import { aSpot, expectNothingWritten, expectRefused, insert } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let engineer: SiteAgent
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
})

describe('a grease gun', () => {
  it('says what a stroke of it gives, when it was weighed and what it is loaded with', async () => {
    const gun = aGun(service.alpha, { note: 'Blue hose' })
    const made = await technician.post('/guns', gun).expect(201)
    expect(made.body).toMatchObject(gun)
    expect((await technician.get('/guns?search=blue').expect(200)).body.items).toEqual([made.body])
    const weighed = { gramsPerStroke: 1.15, strokesWeighed: 20, calibratedOn: '2026-02-01' }
    const changed = await technician.patch(`/guns/${gun.id}`, weighed, 1).expect(200)
    expect(changed.body).toMatchObject({ ...gun, ...weighed, version: 2 })
  })

  it.each([[0], [0.05], [11]])('of %s g a stroke is refused', async (gramsPerStroke) => {
    await expectRefused(
      technician.post('/guns', aGun(service.alpha, { gramsPerStroke })),
      400,
      'request-invalid',
      'gramsPerStroke',
    )
  })

  it('is loaded with another grease by an act that may be sent twice', async () => {
    const gun = aGun(service.alpha, { greaseId: null })
    await technician.post('/guns', gun).expect(201)
    const load = { id: randomUUID(), greaseId: service.alpha.greaseId, loadedAt: new Date().toISOString() }
    const first = await technician.post(`/guns/${gun.id}/loads`, load).expect(201)
    expect(first.body).toMatchObject({ greaseId: service.alpha.greaseId, version: 2 })
    expect((await technician.post(`/guns/${gun.id}/loads`, load).expect(201)).body).toEqual(first.body)
    const unknown = { ...load, id: randomUUID(), greaseId: randomUUID() }
    await expectRefused(technician.post(`/guns/${gun.id}/loads`, unknown), 404, 'not-found', 'greaseId')
    await expectRefused(
      technician.post(`/guns/${randomUUID()}/loads`, { ...load, id: randomUUID() }),
      404,
      'not-found',
      'id',
    )
  })
})

describe('stops that are proposed', () => {
  it('come in the walking order of areas, then by machine and position tag, with dose, grease and due state', async () => {
    const { siteId } = service.alpha
    const [near, far] = [anArea({ siteId, walkingOrder: 1 }), anArea({ siteId, walkingOrder: 2 })]
    await insert(service.owner, siteId, 'area', [far, near])
    const at = async (areaId: string, machineTag: string, tag: string) =>
      await aSpot(service, { machine: { areaId, tag: machineTag }, position: { tag } })
    await at(far.id, 'A-01', 'A-01-X')
    await at(near.id, 'C-02', 'C-02-X')
    await at(near.id, 'B-09', 'B-09-X')
    const reply = await technician.get(`/round-proposals?areaIds=${far.id},${near.id}`).expect(200)
    expect(reply.body.items.map(({ tag }: { tag: string }) => tag)).toEqual(['B-09-X', 'C-02-X', 'A-01-X'])
    expect(reply.body.more).toBe(false)
    expect(reply.body.items[0]).toMatchObject({
      task: 'regrease',
      machineTag: 'B-09',
      areaId: near.id,
      greaseId: service.alpha.greaseId,
      doseG: 42,
      lastGreasedAt: null,
    })
    const ofGrease = await technician.get(`/round-proposals?areaIds=${near.id}&greaseIds=${randomUUID()}`).expect(200)
    expect(ofGrease.body.items).toEqual([])
    const byTag = await technician.get(`/round-proposals?areaIds=${far.id},${near.id}&search=b-09`).expect(200)
    expect(byTag.body.items).toHaveLength(1)
    const cut = await technician.get(`/round-proposals?areaIds=${far.id},${near.id}&limit=2`).expect(200)
    expect([cut.body.items.length, cut.body.more]).toEqual([2, true])
  })
})

describe('a round', () => {
  it('keeps its stops in the order given, each with its plan', async () => {
    const spots = [await aSpot(service), await aSpot(service), await aSpot(service)]
    const body = aRound([spots[2]!.positionId, spots[0]!.positionId, spots[1]!.positionId], { note: 'Before the rain' })
    const made = await engineer.post('/rounds', body).expect(201)
    expect(made.body).toMatchObject({ name: body.name, note: 'Before the rain', retired: false, version: 1 })
    expect(made.body.stops.map(({ id, tag }: { id: string; tag: string }) => [id, tag])).toEqual([
      [body.stops[0]!.id, spots[2]!.tag],
      [body.stops[1]!.id, spots[0]!.tag],
      [body.stops[2]!.id, spots[1]!.tag],
    ])
    expect(made.body.stops[0]).toMatchObject({ planId: spots[2]!.planId, doseG: 42, entry: 'side' })
    expect((await technician.get(`/rounds/${body.id}`).expect(200)).body).toEqual(made.body)
    expect((await engineer.post('/rounds', body).expect(201)).body).toEqual(made.body)
  })

  it('is changed whole by the version that was read', async () => {
    const spots = [await aSpot(service), await aSpot(service)]
    const body = aRound([spots[0]!.positionId])
    await engineer.post('/rounds', body).expect(201)
    const stops = [aStop(spots[1]!.positionId), body.stops[0]!]
    const changed = await engineer.patch(`/rounds/${body.id}`, { name: `${body.name} b`, stops }, 1).expect(200)
    expect(changed.body).toMatchObject({ name: `${body.name} b`, version: 2 })
    expect(changed.body.stops.map(({ tag }: { tag: string }) => tag)).toEqual([spots[1]!.tag, spots[0]!.tag])
    const stale = await engineer.patch(`/rounds/${body.id}`, { note: 'late' }, 1)
    expect([stale.status, stale.body.code]).toEqual([412, 'version-stale'])
    await engineer.patch(`/rounds/${body.id}`, { retired: true }, 2).expect(200)
    const names = async (query: string) =>
      (await technician.get(`/rounds?limit=200${query}`).expect(200)).body.items.map(({ id }: { id: string }) => id)
    expect([(await names('')).includes(body.id), (await names('&retired=true')).includes(body.id)]).toEqual([
      false,
      true,
    ])
  })

  it('is made by the engineer, not by the technician', async () => {
    const reply = await technician.post('/rounds', aRound([service.alpha.locating.id]))
    expect([reply.status, reply.body.code]).toEqual([403, 'role-not-allowed'])
  })

  it('is refused with an unknown position, twice the same, or none', async () => {
    const { positionId } = await aSpot(service)
    await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
      const unknown = aRound([positionId, randomUUID()])
      const { detail } = await expectRefused(engineer.post('/rounds', unknown), 404, 'not-found', 'stops.1.positionId')
      expect(detail).toBe('Stop 2 names no position that is in use at this site: take it out of the round.')
      const twice = aRound([positionId, positionId])
      expect((await expectRefused(engineer.post('/rounds', twice), 422, 'not-allowed-here', 'stops')).detail).toContain(
        'twice',
      )
      await expectRefused(engineer.post('/rounds', aRound([])), 400, 'request-invalid', 'stops')
    })
  })

  it('costs as many statements for many stops as for few, in the list too', async () => {
    const spots = [await aSpot(service), await aSpot(service), await aSpot(service), await aSpot(service)]
    const few = aRound([spots[0]!.positionId])
    const many = aRound(spots.map(({ positionId }) => positionId))
    await engineer.post('/rounds', few).expect(201)
    await engineer.post('/rounds', many).expect(201)
    const read = (id: string) => countStatements(() => technician.get(`/rounds/${id}`).expect(200))
    expect(await read(many.id)).toBe(await read(few.id))
    const list = (limit: number) => countStatements(() => technician.get(`/rounds?limit=${limit}`).expect(200))
    expect(await list(50)).toBe(await list(1))
  })
})
