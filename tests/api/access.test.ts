import { randomUUID } from 'node:crypto'
import supertest from 'supertest'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { ask } from './shaft-work.ts'

const service = useTestApp()
let manager: SiteAgent
let engineer: SiteAgent
beforeAll(async () => {
  manager = await service.signIn(service.alpha.people.manager, 'alpha')
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
})

describe('the site', () => {
  it('is read with every setting that its verdicts go by', async () => {
    const site = (await engineer.get('').expect(200)).body
    expect(site).toMatchObject({ code: 'alpha', timeZone: 'Europe/Berlin' })
    expect(site.settings).toMatchObject({
      coverageFactor: 2,
      reductionAcceptance: 'simple',
      residualAcceptance: 'proven',
    })
  })

  it('is changed as far as it is given, and the audit trail keeps before and after', async () => {
    const before = (await manager.get('')).body
    const settings = { ...before.settings, coverageFactor: 1.65 }
    const changed = await manager.patch('', { settings, timeZone: 'America/Chicago' }).expect(200)
    expect(changed.body).toEqual({ ...before, settings, timeZone: 'America/Chicago' })
    const [entry] = (await manager.get('/audit-entries?table=site')).body.items
    expect(entry).toMatchObject({
      person: service.alpha.people.manager.name,
      action: 'update',
      rowId: service.alpha.siteId,
      before: { time_zone: 'Europe/Berlin' },
      after: { time_zone: 'America/Chicago', settings },
    })
    await manager.patch('', { settings: before.settings, timeZone: before.timeZone }).expect(200)
  })

  it.each(['Atlantis/Centre', 'Berlin time', ''])('refuses "%s" as a time zone', async (timeZone) => {
    const reply = await manager.patch('', { timeZone })
    expect(reply.status).toBe(400)
    expect(reply.body.fields[0].path).toBe('timeZone')
  })

  it('keeps the settings that a change leaves out, also those that somebody else changes at once', async () => {
    const { settings } = (await manager.get('')).body
    await Promise.all([
      manager.patch('', { settings: { greasingWindowPercent: 20 } }).expect(200),
      manager.patch('', { settings: { coverageFactor: 2.5 } }).expect(200),
    ])
    await manager.patch('', { settings: { missedBeyondPercent: 60 } }).expect(200)
    const changed = { ...settings, greasingWindowPercent: 20, coverageFactor: 2.5, missedBeyondPercent: 60 }
    expect((await manager.get('')).body.settings).toEqual(changed)
    await manager.patch('', { settings }).expect(200)
  })

  it('refuses that an interval is missed before its window is over', async () => {
    const reply = await manager.patch('', { settings: { greasingWindowPercent: 40, missedBeyondPercent: 30 } })
    expect([reply.status, reply.body.fields[0].path]).toEqual([422, 'settings.missedBeyondPercent'])
  })

  it('refuses a setting that does not exist or is out of range', async () => {
    expect((await manager.patch('', { settings: { coverage: 2 } })).status).toBe(400)
    expect((await manager.patch('', { settings: { coverageFactor: 9 } })).status).toBe(400)
    expect((await manager.patch('', { code: 'other' })).status).toBe(400)
  })
})

describe('people', () => {
  const aPerson = (over: object = {}) => ({
    id: randomUUID(),
    name: 'Wenda Olt',
    email: `${randomUUID()}@alpha.example`,
    password: 'ten letters and more',
    role: 'technician',
    ...over,
  })

  it('who are let in can sign in, here only', async () => {
    const person = aPerson()
    const made = await manager.post('/people', person).expect(201)
    expect(made.body).toEqual({
      id: person.id,
      name: person.name,
      email: person.email,
      role: 'technician',
      disabled: false,
    })
    const { email, password } = person
    const reply = await supertest(service.app.server).post('/api/v1/session').send({ email, password }).expect(200)
    expect(reply.body.memberships).toMatchObject([{ siteCode: 'alpha', role: 'technician' }])
    expect((await manager.get('/people?limit=200')).body.items).toContainEqual(made.body)
  })

  it('are let in once, however often the request is sent', async () => {
    const person = aPerson()
    const first = await manager.post('/people', person).expect(201)
    expect((await manager.post('/people', person).expect(201)).body).toEqual(first.body)
    const again = await manager.post('/people', aPerson({ email: person.email }))
    expect([again.status, again.body.fields[0].path]).toEqual([409, 'email'])
    const taken = await manager.post('/people', aPerson({ id: person.id }))
    expect([taken.status, taken.body.code]).toEqual([409, 'id-already-used'])
  })

  it('who sign in at another site keep their name and password there', async () => {
    const known = service.beta.people.stores
    const reply = await manager.post('/people', aPerson({ email: known.email, role: 'stores' })).expect(201)
    expect(reply.body).toMatchObject({ id: known.id, name: known.name, role: 'stores' })
    const { email, password } = known
    const signedIn = await supertest(service.app.server).post('/api/v1/session').send({ email, password }).expect(200)
    expect(signedIn.body.memberships.map((at: { siteCode: string }) => at.siteCode)).toEqual(['alpha', 'beta'])
  })

  it('leave no password in what a request leaves behind', async () => {
    const [person, twin] = [aPerson(), aPerson()]
    await manager.post('/people', person).expect(201)
    await manager.post('/people', { ...twin, password: 'another password' }).expect(201)
    const other = await manager.post('/people', { ...twin, password: 'yet another one' })
    expect(other.status).toBe(201)
    const stored = await ask<{ text: string }>(
      service.owner,
      service.alpha.siteId,
      'select to_jsonb(receipt)::text as text from receipt',
    )
    expect(stored.filter((row) => row.text.includes(person.password))).toEqual([])
  })

  it('change their role at this site, and the audit trail says who did it', async () => {
    const { id } = service.alpha.people.technician
    const reply = await manager.patch(`/people/${id}`, { role: 'engineer' }).expect(200)
    expect(reply.body).toMatchObject({ id, role: 'engineer' })
    const [entry] = (await manager.get(`/audit-entries?table=membership&rowId=${id}`)).body.items
    expect(entry).toMatchObject({
      person: service.alpha.people.manager.name,
      before: { role: 'technician' },
      after: { role: 'engineer' },
    })
    await manager.patch(`/people/${id}`, { role: 'technician' }).expect(200)
  })

  it('of another site, or nobody at all, cannot be given a role', async () => {
    expect((await manager.patch(`/people/${service.beta.people.engineer.id}`, { role: 'stores' })).status).toBe(404)
    expect((await manager.patch(`/people/${randomUUID()}`, { role: 'stores' })).status).toBe(404)
  })

  it('keep at least one manager, also when two managers step down at once', async () => {
    const { id } = service.alpha.people.manager
    const alone = await manager.patch(`/people/${id}`, { role: 'stores' })
    expect([alone.status, alone.body.code]).toEqual([422, 'not-allowed-here'])
    expect(alone.body.detail).toMatch(/only manager/)
    const second = aPerson({ role: 'manager' })
    await manager.post('/people', second).expect(201)
    const other = await service.signIn(second, 'alpha')
    const replies = await Promise.all([
      manager.patch(`/people/${id}`, { role: 'stores' }),
      other.patch(`/people/${second.id}`, { role: 'stores' }),
    ])
    expect(replies.map((reply) => reply.status).toSorted((a, b) => a - b)).toEqual([200, 422])
  })
})

describe('the audit trail', () => {
  it('keeps table, row, person, before and after of a change, the newest first', async () => {
    const { areaId, people } = service.alpha
    await engineer.patch(`/areas/${areaId}`, { name: 'Renamed' }, 1).expect(200)
    const { items } = (await engineer.get(`/audit-entries?rowId=${areaId}`).expect(200)).body
    expect(items.map((entry: { action: string }) => entry.action)).toEqual(['update', 'insert'])
    expect(items[0]).toMatchObject({
      person: people.engineer.name,
      table: 'area',
      rowId: areaId,
      before: { name: 'Gallery', version: 1 },
      after: { name: 'Renamed', version: 2 },
    })
    expect(items[1]).toMatchObject({ person: null, before: null, after: { name: 'Gallery' } })
  })

  it('keeps nothing where nothing was changed', async () => {
    const { areaId } = service.alpha
    const count = async () => (await engineer.get(`/audit-entries?rowId=${areaId}`)).body.items.length
    const before = await count()
    const { version } = (await engineer.get(`/areas/${areaId}`)).body
    await engineer.patch(`/areas/${areaId}`, {}, version).expect(200)
    await engineer.patch(`/areas/${areaId}`, { name: 'Stale' }, version - 1).expect(412)
    expect(await count()).toBe(before)
  })
})
