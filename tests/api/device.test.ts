import { randomUUID } from 'node:crypto'
import supertest from 'supertest'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aMount, ask } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
})

async function deviceKeyOf(person: { email: string; password: string }): Promise<string> {
  const agent = supertest.agent(service.app.server)
  const { email, password } = person
  await agent.post('/api/v1/session').send({ email, password }).expect(200)
  const reply = await agent.get('/api/v1/session/device-key').expect(200)
  expect(reply.headers['cache-control']).toBe('no-store')
  expect(reply.body.personId).toBe((await agent.get('/api/v1/session').expect(200)).body.id)
  return reply.body.key
}

describe('the key of a device', () => {
  it('is 32 bytes, the same for a person at every sign-in, and another one for everybody else', async () => {
    const { technician, stores } = service.alpha.people
    const [first, again, other] = [
      await deviceKeyOf(technician),
      await deviceKeyOf(technician),
      await deviceKeyOf(stores),
    ]
    expect(Buffer.from(first, 'base64')).toHaveLength(32)
    expect(again).toBe(first)
    expect(other).not.toBe(first)
  })

  it('is there for a person who is let in later', async () => {
    const manager = await service.signIn(service.alpha.people.manager, 'alpha')
    const person = {
      id: randomUUID(),
      name: 'Wenda Olt',
      email: 'wenda@alpha.example',
      password: 'ten letters and more',
    }
    await manager.post('/people', { ...person, role: 'technician' }).expect(201)
    expect(Buffer.from(await deviceKeyOf(person), 'base64')).toHaveLength(32)
  })

  it('is given to nobody without a session, and not by one that is over', async () => {
    const stranger = await supertest(service.app.server).get('/api/v1/session/device-key')
    expect([stranger.status, stranger.body.code]).toEqual([401, 'not-signed-in'])
    const agent = supertest.agent(service.app.server)
    const { email, password } = service.alpha.people.technician
    const { headers } = await agent.post('/api/v1/session').send({ email, password }).expect(200)
    await agent.delete('/api/v1/session').expect(204)
    const late = await supertest(service.app.server)
      .get('/api/v1/session/device-key')
      .set('cookie', String(headers['set-cookie']).split(';')[0] ?? '')
    expect(late.status).toBe(401)
  })

  it('cannot be read past the session: the serving role has no way to the column', async () => {
    const { rows } = await service.owner.query<{ may: boolean }>(
      `select has_column_privilege('shaftbook_app', 'person', 'device_key', 'select') as may`,
    )
    expect(rows).toEqual([{ may: false }])
  })
})

describe('the overviews that a device takes along', () => {
  it('are what the page of each position shows, by tag', async () => {
    const { locating, nonLocating, areaId } = service.alpha
    await technician.post('/mount-records', aMount(service.alpha, { positionId: locating.id })).expect(201)
    const { items, nextCursor } = (await technician.get(`/position-overviews?areaId=${areaId}`).expect(200)).body
    const byTag = [locating, nonLocating].toSorted((a, b) => (a.tag < b.tag ? -1 : 1))
    expect(items.map((item: { position: { tag: string } }) => item.position.tag)).toEqual(byTag.map(({ tag }) => tag))
    expect(nextCursor).toBeNull()
    for (const item of items)
      expect(item).toEqual((await technician.get(`/positions/${item.position.id}/overview`).expect(200)).body)
    const mounted = items.find((item: { position: { id: string } }) => item.position.id === locating.id)
    expect(mounted.fitment).not.toBeNull()
    expect(mounted.kit.lines.length).toBeGreaterThan(3)
    expect(mounted.plan.doseG).toBe(42)
    expect(mounted.due.positionId).toBe(locating.id)
  })

  it('come with the life strips that the pages of the positions draw', async () => {
    const { items } = (await technician.get('/position-histories').expect(200)).body
    expect(items).toHaveLength(2)
    for (const { positionId, ...history } of items)
      expect(history).toEqual((await technician.get(`/positions/${positionId}/history`).expect(200)).body)
    expect(items.flatMap((item: { fitments: object[] }) => item.fitments)).toHaveLength(1)
    expect(items.flatMap((item: { greasings: object[] }) => item.greasings).length).toBeLessThanOrEqual(1)
  })

  it('draw the newest 50 greasings, and say that older ones are left out', async () => {
    const { siteId, locating, greaseId, people } = service.alpha
    await ask(
      service.owner,
      siteId,
      `insert into greasing (site_id, id, position_id, plan_id, greased_at, grease_id, dose_g, kind, hours_source, signed_at, signed_by)
       select '${siteId}', gen_random_uuid(), '${locating.id}', '${locating.planId}', now() - n * interval '1 day',
         '${greaseId}', 10, 'regreasing', 'none', now(), '${people.technician.id}' from generate_series(1, 60) n`,
    )
    const { items } = (await technician.get('/position-histories').expect(200)).body
    const drawn = items.find((item: { positionId: string }) => item.positionId === locating.id)
    const whole = (await technician.get(`/positions/${locating.id}/history`).expect(200)).body
    expect(drawn.greasings).toEqual(whole.greasings.slice(0, 50))
    expect([drawn.olderGreasingsLeftOut, whole.olderGreasingsLeftOut]).toEqual([true, false])
  })

  it('come a page at a time', async () => {
    const first = (await technician.get('/position-overviews?limit=1').expect(200)).body
    const second = (await technician.get(`/position-overviews?limit=1&cursor=${first.nextCursor}`).expect(200)).body
    const ids = [...first.items, ...second.items].map((item: { position: { id: string } }) => item.position.id)
    expect(new Set(ids)).toEqual(new Set([service.alpha.locating.id, service.alpha.nonLocating.id]))
    expect(second.nextCursor).toBeNull()
  })

  it('are those of the area that is asked for, at this site only', async () => {
    const other = (await technician.get(`/position-overviews?areaId=${service.beta.areaId}`).expect(200)).body
    expect(other.items).toEqual([])
  })

  it('can be narrowed to the positions at which a mount is planned', async () => {
    expect((await technician.get('/position-overviews?planned=true').expect(200)).body.items).toEqual([])
    const { siteId, nonLocating, people } = service.alpha
    await ask(
      service.owner,
      siteId,
      `insert into mount_plan (site_id, id, position_id, planned_for, reason, planned_by)
       values ('${siteId}', '${randomUUID()}', '${nonLocating.id}', current_date, 'Overhaul', '${people.engineer.id}')`,
    )
    const { items } = (await technician.get('/position-overviews?planned=true').expect(200)).body
    expect(items.map((item: { position: { id: string } }) => item.position.id)).toEqual([nonLocating.id])
  })

  it('leave out a position that is retired', async () => {
    const { siteId, nonLocating } = service.beta
    await ask(service.owner, siteId, `update position set retired_at = now() where id = '${nonLocating.id}'`)
    const agent = await service.signIn(service.beta.people.technician, 'beta')
    const { items } = (await agent.get('/position-overviews').expect(200)).body
    expect(items.map((item: { position: { id: string } }) => item.position.id)).toEqual([service.beta.locating.id])
  })
})
