import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { aBearingType } from '../../seeds/builders/catalogue-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { countStatements } from '../support/statements.ts'
import { aMount, aSpot, daysOn, expectNothingWritten, expectRefused, insert, plannedRemoval } from './shaft-work.ts'
import { aPlan, aSpotWithKit, inDays } from './sheet-work.ts'

const service = useTestApp()
let technician: SiteAgent
let engineer: SiteAgent
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
})

async function planned(over: Record<string, unknown>) {
  return (await engineer.post('/mount-plans', aPlan(service.alpha, over)).expect(201)).body
}

describe('a planned mount', () => {
  it('names the position, its bearing, its kit and who planned it', async () => {
    const { positionId, tag, kitId } = await aSpotWithKit(service)
    const plan = await planned({ positionId, who: 'Ada Brunn', note: 'Bring the long hook spanner' })
    expect(plan).toMatchObject({
      positionId,
      tag,
      kitId,
      plannedFor: inDays(7),
      reason: 'Bearing reads warm since June',
      bearingTypeId: null,
      designation: '22220 K/C3',
      who: 'Ada Brunn',
      state: 'open',
      plannedBy: 'engineer of alpha',
      endedAt: null,
      mountRecordId: null,
    })
    expect((await technician.get(`/mount-plans/${plan.id}`).expect(200)).body).toEqual(plan)
  })

  it('sent twice is one', async () => {
    const { positionId } = await aSpot(service)
    const body = aPlan(service.alpha, { positionId })
    const first = await engineer.post('/mount-plans', body).expect(201)
    expect((await engineer.post('/mount-plans', body).expect(201)).body).toEqual(first.body)
  })

  it('is planned by the engineer, not by the technician', async () => {
    const reply = await technician.post('/mount-plans', aPlan(service.alpha))
    expect([reply.status, reply.body.code]).toEqual([403, 'role-not-allowed'])
  })

  it.each([
    ['the position is unknown', { positionId: randomUUID() }, 404, 'not-found', 'positionId', 'no such position'],
    ['the day is past', { plannedFor: inDays(-2) }, 422, 'not-allowed-here', 'plannedFor', 'is past'],
    ['the type is unknown', { bearingTypeId: randomUUID() }, 404, 'not-found', 'bearingTypeId', 'no such bearing type'],
    ['no reason is given', { reason: '' }, 400, 'request-invalid', 'reason', 'reason'],
  ])('is refused where %s', async (_, over, status, code, path, words) => {
    await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
      const request = engineer.post('/mount-plans', aPlan(service.alpha, over))
      expect((await expectRefused(request, status, code, path)).detail).toContain(words)
    })
  })

  it('is refused at a retired position', async () => {
    const { positionId, tag } = await aSpot(service, { position: { retiredAt: new Date() } })
    const request = engineer.post('/mount-plans', aPlan(service.alpha, { positionId }))
    const { detail } = await expectRefused(request, 422, 'not-allowed-here', 'positionId')
    expect(detail).toMatch(new RegExp(`^${tag} is retired since .*: no mount is planned there.$`))
  })

  it('is refused for a bearing that does not go on there', async () => {
    const type = aBearingType({ siteId: service.alpha.siteId, basicCode: '22222' })
    await insert(service.owner, service.alpha.siteId, 'bearing_type', [type])
    const request = engineer.post('/mount-plans', aPlan(service.alpha, { bearingTypeId: type.id }))
    const { detail } = await expectRefused(request, 422, 'not-allowed-here', 'bearingTypeId')
    expect(detail).toContain('the position takes a 22220')
  })

  it('is one at a position and day as long as it is open', async () => {
    const { positionId } = await aSpot(service)
    const plan = await planned({ positionId })
    const request = engineer.post('/mount-plans', aPlan(service.alpha, { positionId }))
    const { detail } = await expectRefused(request, 422, 'not-allowed-here', 'plannedFor')
    expect(detail).toBe('A mount is planned at this position for that day already: change that plan.')
    await planned({ positionId, plannedFor: inDays(8) })
    await engineer.patch(`/mount-plans/${plan.id}`, { droppedReason: 'The stop was moved' }, 1).expect(200)
    await planned({ positionId })
  })
})

describe('changing a planned mount', () => {
  it('changes what is given, by the version that was read', async () => {
    const { positionId } = await aSpot(service)
    const plan = await planned({ positionId, who: 'Ada Brunn' })
    const change = { plannedFor: inDays(9), note: 'Two people' }
    const changed = await engineer.patch(`/mount-plans/${plan.id}`, change, plan.version).expect(200)
    expect(changed.body).toMatchObject({ ...change, who: 'Ada Brunn', state: 'open', version: plan.version + 1 })
    const stale = await engineer.patch(`/mount-plans/${plan.id}`, change, plan.version)
    expect([stale.status, stale.body.code]).toEqual([412, 'version-stale'])
    const past = engineer.patch(`/mount-plans/${plan.id}`, { plannedFor: inDays(-3) }, changed.body.version)
    await expectRefused(past, 422, 'not-allowed-here', 'plannedFor')
  })

  it('drops it with a reason, once', async () => {
    const { positionId } = await aSpot(service)
    const plan = await planned({ positionId })
    const drop = { droppedReason: 'Another one runs first' }
    const dropped = await engineer.patch(`/mount-plans/${plan.id}`, drop, 1).expect(200)
    expect(dropped.body).toMatchObject({ ...drop, state: 'dropped', endedAt: expect.stringMatching(/Z$/) })
    const again = engineer.patch(`/mount-plans/${plan.id}`, { note: 'x' }, dropped.body.version)
    const { detail } = await expectRefused(again, 409, 'plan-closed', 'id')
    expect(detail).toMatch(/^The mount planned at .* was dropped on .*: Another one runs first\.$/)
  })
})

describe('a signature for a planned mount', () => {
  it('closes the plan', async () => {
    const { positionId } = await aSpot(service)
    const plan = await planned({ positionId })
    const body = aMount(service.alpha, { positionId, planId: plan.id, sign: false })
    await technician.post('/mount-records', body).expect(201)
    expect((await engineer.get(`/mount-plans/${plan.id}`)).body.state).toBe('open')
    const signed = await technician.postIfMatch(`/mount-records/${body.id}/signature`, {}, 1).expect(200)
    expect(signed.body.planId).toBe(plan.id)
    expect((await engineer.get(`/mount-plans/${plan.id}`)).body).toMatchObject({
      state: 'done',
      mountRecordId: body.id,
      endedAt: signed.body.signedAt,
    })
  })

  it('is refused where the plan is closed already, or dropped', async () => {
    const { positionId, tag } = await aSpot(service)
    const [done, dropped] = [await planned({ positionId }), await planned({ positionId, plannedFor: inDays(8) })]
    await technician.post('/mount-records', aMount(service.alpha, { positionId, planId: done.id })).expect(201)
    await engineer.patch(`/mount-plans/${dropped.id}`, { droppedReason: 'Not needed' }, 1).expect(200)
    const at = { positionId, mountedAt: daysOn(service.alpha, 85), meterShowsHours: 2600, removal: plannedRemoval }
    await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
      const send = (planId: string) => technician.post('/mount-records', aMount(service.alpha, { ...at, planId }))
      const first = await expectRefused(send(done.id), 409, 'plan-closed', 'planId')
      expect(first.detail).toContain(`The mount planned at ${tag} for ${inDays(7)} was closed by a signed mount on`)
      const second = await expectRefused(send(dropped.id), 409, 'plan-closed', 'planId')
      expect(second.detail).toContain('Not needed')
    })
  })

  it('is refused for a plan of another position, and for one that is not there', async () => {
    const [one, other] = [await aSpot(service), await aSpot(service)]
    const plan = await planned({ positionId: one.positionId })
    const send = (planId: string) =>
      technician.post('/mount-records', aMount(service.alpha, { positionId: other.positionId, planId }))
    const { detail } = await expectRefused(send(plan.id), 422, 'not-allowed-here', 'planId')
    expect(detail).toContain(`This mount was planned at ${one.tag}, not at ${other.tag}`)
    await expectRefused(send(randomUUID()), 404, 'not-found', 'planId')
  })
})

describe('the list of planned mounts', () => {
  it('is in the order of days, page by page, by position, area and state', async () => {
    const { positionId } = await aSpot(service)
    const ninth = (await planned({ positionId, plannedFor: inDays(9) })).id
    const fifth = (await planned({ positionId, plannedFor: inDays(5) })).id
    const seventh = (await planned({ positionId, plannedFor: inDays(7) })).id
    const list = async (query: string) =>
      (await technician.get(`/mount-plans?positionId=${positionId}${query}`).expect(200)).body
    const ids = async (query: string) => (await list(query)).items.map(({ id }: { id: string }) => id)
    expect(await ids('')).toEqual([fifth, seventh, ninth])
    const first = await list('&limit=2')
    expect(await ids(`&limit=2&cursor=${first.nextCursor}`)).toEqual([ninth])
    await engineer.patch(`/mount-plans/${seventh}`, { droppedReason: 'Not needed' }, 1).expect(200)
    expect(await ids('')).toEqual([fifth, ninth])
    expect(await ids('&state=dropped')).toEqual([seventh])
    expect(await ids('&state=done')).toEqual([])
    expect(await ids(`&areaId=${service.alpha.areaId}`)).toEqual([fifth, ninth])
    expect(await ids(`&areaId=${randomUUID()}`)).toEqual([])
  })

  it('costs as many statements for many as for few', async () => {
    const [few, many] = [await aSpot(service), await aSpot(service)]
    await planned({ positionId: few.positionId })
    for (const days of [3, 4, 5, 6]) await planned({ positionId: many.positionId, plannedFor: inDays(days) })
    const count = (positionId: string) =>
      countStatements(() => technician.get(`/mount-plans?positionId=${positionId}`).expect(200))
    expect(await count(many.positionId)).toBe(await count(few.positionId))
  })
})
