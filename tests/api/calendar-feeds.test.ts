import { randomUUID } from 'node:crypto'
import ICAL from 'ical.js'
import supertest from 'supertest'
import { beforeAll, describe, expect, it } from 'vitest'
import { anArea } from '../../seeds/builders/site-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aRound, aStop } from './round-work.ts'
import { ask, aSpot, expectNothingWritten, expectRefused, insert, type Spot } from './shaft-work.ts'

const service = useTestApp({ address: 'https://book.example' })
let technician: SiteAgent
let engineer: SiteAgent
const today = '2026-11-25'
const silo = randomUUID()
let late: Spot
let soon: Spot
let elsewhere: Spot

beforeAll(async () => {
  const { alpha, beta, owner } = service
  service.setNow(new Date(`${today}T10:00:00Z`))
  await insert(owner, alpha.siteId, 'area', [
    anArea({ siteId: alpha.siteId, id: silo, code: 'SIL', name: 'Silo, north; "old"' }),
  ])
  late = await aSpot(service, { position: { tag: 'BE-1-DE' } })
  soon = await aSpot(service, { position: { tag: 'BE-2-DE' } })
  elsewhere = await aSpot(service, { machine: { areaId: silo }, position: { tag: 'SL-1-DE' } })
  await addDue(alpha.siteId, late, alpha.areaId, '2026-10-02', 'missed')
  await addDue(alpha.siteId, soon, alpha.areaId, '2026-12-24', 'not-due')
  await addDue(alpha.siteId, elsewhere, silo, '2026-11-30', 'due-soon')
  await addDue(
    beta.siteId,
    { positionId: beta.locating.id, planId: beta.locating.planId },
    beta.areaId,
    '2026-11-26',
    'due',
  )
  technician = await service.signIn(alpha.people.technician, 'alpha')
  engineer = await service.signIn(alpha.people.engineer, 'alpha')
})

async function addDue(
  siteId: string,
  spot: Pick<Spot, 'positionId' | 'planId'>,
  areaId: string,
  dueOn: string,
  state: string,
): Promise<void> {
  await ask(
    service.owner,
    siteId,
    `insert into grease_due (site_id, id, position_id, area_id, due_on, due_by, estimated, due_soon_on, overdue_on, missed_on, state)
     values ($1, $2, $3, $4, $5, 'hours', true, $5, $5, $5, $6)`,
    [siteId, spot.planId, spot.positionId, areaId, dueOn, state],
  )
}

/** Makes a link and answers with its path and id. */
async function aLink(agent: SiteAgent, body: object = {}): Promise<{ id: string; path: string }> {
  const id = randomUUID()
  const reply = await agent.post('/calendar-feeds', { id, ...body }).expect(201)
  expect(reply.body.address).toMatch(/^https:\/\/book\.example\/api\/v1\/feeds\/[\w-]{43}\.ics$/)
  return { id, path: new URL(reply.body.address).pathname }
}

/** What somebody gets who has nothing but the link. */
const open = (path: string) => supertest(service.app.server).get(path)
const remove = (agent: SiteAgent, id: string) => agent.delete(`/calendar-feeds/${id}`)

/** Reads the calendar by another program. */
function eventsOf(text: string): ICAL.Event[] {
  const calendar = new ICAL.Component(ICAL.parse(text))
  expect(calendar.getFirstPropertyValue('version')).toBe('2.0')
  return calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event))
}

describe('a calendar link', () => {
  it('opens all-day events of what is due in its area; another program reads them', async () => {
    const { path } = await aLink(technician, { areaId: service.alpha.areaId })
    const reply = await open(path).expect(200)
    expect(reply.headers['content-type']).toBe('text/calendar; charset=utf-8')
    const events = eventsOf(reply.text)
    expect(
      events.map((event) => ({
        uid: event.uid,
        from: event.startDate.toString(),
        to: event.endDate.toString(),
        wholeDay: event.startDate.isDate,
        summary: event.summary,
        url: event.component.getFirstPropertyValue('url'),
      })),
    ).toEqual([
      {
        uid: `${late.planId}@alpha.shaftbook`,
        from: today,
        to: '2026-11-26',
        wholeDay: true,
        summary: 'Overdue: BE-1-DE, grease with 42 g Marl EP 2',
        url: `https://book.example/alpha/positions/${late.positionId}`,
      },
      {
        uid: `${soon.planId}@alpha.shaftbook`,
        from: '2026-12-24',
        to: '2026-12-25',
        wholeDay: true,
        summary: 'BE-2-DE, grease with 42 g Marl EP 2',
        url: `https://book.example/alpha/positions/${soon.positionId}`,
      },
    ])
    expect(events[0]?.location).toMatch(/^Gallery \/ /)
    expect(events[0]?.description).toContain('due 2026-10-02, estimated')
  })

  it('of the whole site holds all areas of it and nothing of another site, signs of the format in names included', async () => {
    const { path } = await aLink(technician)
    const { text } = await open(path).expect(200)
    const events = eventsOf(text)
    expect(events.map(({ summary }) => summary.replace(/,.*/, ''))).toEqual(['Overdue: BE-1-DE', 'SL-1-DE', 'BE-2-DE'])
    expect(events[1]?.location).toMatch(/^Silo, north; "old" \/ /)
    expect(text).not.toContain(service.beta.locating.planId)
    expect(text).not.toMatch(/beta/i)
  })

  it('of a round holds the stops of it, in whatever area they stand, and follows the round when it changes', async () => {
    const round = aRound([soon.positionId, elsewhere.positionId])
    await engineer.post('/rounds', round).expect(201)
    const { path } = await aLink(technician, { roundId: round.id })
    const tags = async (): Promise<string[]> =>
      eventsOf((await open(path).expect(200)).text).map(({ summary }) => summary.replace(/,.*/, ''))
    expect(await tags()).toEqual(['SL-1-DE', 'BE-2-DE'])
    expect((await open(path)).text).toContain(round.name)
    await engineer.patch(`/rounds/${round.id}`, { stops: [aStop(late.positionId)] }, 1).expect(200)
    expect(await tags()).toEqual(['Overdue: BE-1-DE'])
    const listed = (await technician.get('/calendar-feeds').expect(200)).body.items.at(-1)
    expect(listed).toMatchObject({ roundId: round.id, roundName: round.name, areaId: null })
  })

  it('keeps its lines to 75 bytes and ends them as RFC 5545 says', async () => {
    const { path } = await aLink(technician)
    const { text } = await open(path).expect(200)
    const lines = text.split('\r\n')
    expect(lines.length).toBeGreaterThan(20)
    expect(lines.filter((line) => Buffer.byteLength(line) > 75 || line.includes('\n'))).toEqual([])
  })

  it('answers 304 to who has it already, and anew once something changed', async () => {
    const { path } = await aLink(technician, { areaId: silo })
    const { etag } = (await open(path).expect(200)).headers
    await open(path).set('if-none-match', String(etag)).expect(304)
    await ask(
      service.owner,
      service.alpha.siteId,
      `update grease_due set due_on = '2026-12-01' where id = '${elsewhere.planId}'`,
    )
    const reply = await open(path).set('if-none-match', String(etag)).expect(200)
    expect(eventsOf(reply.text).map(({ uid, startDate }) => [uid, startDate.toString()])).toEqual([
      [`${elsewhere.planId}@alpha.shaftbook`, '2026-12-01'],
    ])
  })

  it('is not found any more at once when it is ended', async () => {
    const { id, path } = await aLink(technician)
    await open(path).expect(200)
    await remove(technician, id).expect(204)
    const reply = await open(path).expect(404)
    expect(reply.body.detail).toMatch(/ended/)
    await remove(technician, id).expect(404)
  })

  it('is not found with a secret that was never given, of any length', async () => {
    const secrets = ['x', randomUUID(), 'a'.repeat(43), '%00']
    const replies = await Promise.all(secrets.map((secret) => open(`/api/v1/feeds/${secret}.ics`)))
    expect(replies.map(({ status }) => status)).toEqual([404, 404, 404, 404])
  })

  it('stops when its person is disabled or leaves the site', async () => {
    const { owner, alpha } = service
    const { path } = await aLink(engineer)
    const { id } = alpha.people.engineer
    const after = async (change: string): Promise<number> => {
      await ask(owner, alpha.siteId, change)
      return (await open(path)).status
    }
    expect(await after(`update person set disabled_at = now() where id = '${id}'`)).toBe(404)
    expect(await after(`update person set disabled_at = null where id = '${id}'`)).toBe(200)
    expect(await after(`delete from membership where person_id = '${id}'`)).toBe(404)
    const back = `insert into membership (person_id, site_id, role) values ('${id}', '${alpha.siteId}', 'engineer')`
    expect(await after(back)).toBe(200)
  })

  it('keeps only the hash of its secret in the tables and in the audit trail', async () => {
    const { owner, alpha } = service
    const { path } = await aLink(technician)
    const secret = /([\w-]{43})\.ics/.exec(path)?.[1] as string
    const rows = await ask<{ text: string }>(
      owner,
      alpha.siteId,
      `select (select string_agg(f::text, ' ') from calendar_feed f) || (select string_agg(a::text, ' ') from audit_entry a)
         || (select string_agg(r::text, ' ') from receipt r) as text`,
    )
    expect(rows[0]?.text.length).toBeGreaterThan(100)
    expect(rows[0]?.text).not.toContain(secret)
    expect(rows[0]?.text).not.toContain(Buffer.from(secret).toString('hex'))
    expect(rows[0]?.text).not.toContain(Buffer.from(secret, 'base64url').toString('hex'))
  })
})

describe('the list of calendar links', () => {
  it('shows your own ones without their secrets, and nobody else ends them', async () => {
    const { id } = await aLink(technician, { areaId: silo })
    const mine = (await technician.get('/calendar-feeds').expect(200)).body.items
    expect(mine.at(-1)).toEqual({
      id,
      areaId: silo,
      areaName: 'Silo, north; "old"',
      roundId: null,
      roundName: null,
      createdAt: expect.any(String),
    })
    const theirs = (await engineer.get('/calendar-feeds').expect(200)).body.items
    expect(theirs.map((feed: { id: string }) => feed.id)).not.toContain(id)
    await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
      await remove(engineer, id).expect(404)
    })
  })
})

describe('making a calendar link', () => {
  it('again with the same request gives it a new secret, and the one before opens nothing', async () => {
    const body = { id: randomUUID(), areaId: null }
    const first = (await technician.post('/calendar-feeds', body).expect(201)).body
    const second = (await technician.post('/calendar-feeds', body).expect(201)).body
    expect(second.feed).toEqual(first.feed)
    await open(new URL(first.address).pathname).expect(404)
    await open(new URL(second.address).pathname).expect(200)
    await expectRefused(engineer.post('/calendar-feeds', body), 409, 'id-already-used', 'id')
  })

  it('for an area of another site, an unknown round, or for both, is refused', async () => {
    await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
      const make = (body: object) => technician.post('/calendar-feeds', { id: randomUUID(), ...body })
      expect((await make({ areaId: service.beta.areaId })).status).toBe(404)
      await expectRefused(make({ roundId: randomUUID() }), 404, 'not-found', 'roundId')
      await expectRefused(make({ roundId: randomUUID(), areaId: silo }), 400, 'request-invalid', 'roundId')
    })
  })
})
