import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { openDatabase, type Database } from '../../apps/api/src/db/database.ts'
import { openMailer, type Mailer } from '../../apps/api/src/digests/mailer.ts'
import { sendDigests } from '../../apps/api/src/digests/send-digests.ts'
import { anArea } from '../../seeds/builders/site-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { mailPart, openMailServer, type MailServer } from '../support/mail-server.ts'
import { ask, aSpot, expectRefused, insert, type Spot } from './shaft-work.ts'

const service = useTestApp()
const address = 'https://book.example'
const silo = randomUUID()
let technician: SiteAgent
let engineer: SiteAgent
let server: MailServer
let mailer: Mailer
let db: Database
let spots: Spot[]

/** 06:30 on a Wednesday at the plant, which is at UTC+1. */
const wednesday = new Date('2026-11-25T05:30:00Z')
const hours = 3_600_000
const usual = { weekdays: [1, 3], hour: 6, areaIds: [], alsoWhenNothing: false }

beforeAll(async () => {
  const { alpha, owner, database } = service
  const { siteId } = alpha
  server = await openMailServer()
  mailer = openMailer({ smtp: server.url, from: 'Shaftbook <book@alpha.example>' })
  db = openDatabase({
    appUrl: database.appUrl,
    poolSize: 3,
    onError: (error) => {
      throw error
    },
  })
  await ask(owner, siteId, `update site set time_zone = 'Europe/Berlin' where id = '${siteId}'`)
  await insert(owner, siteId, 'area', [anArea({ siteId, id: silo, code: 'SIL', name: 'Silo <north> & "old"' })])
  spots = []
  for (const [tag, state, dueOn] of [
    ['P-1', 'missed', '2026-09-01'],
    ['P-2', 'overdue', '2026-11-01'],
    ['P-3', 'due', '2026-11-24'],
    ['P-4', 'due-soon', '2026-11-30'],
    ['P-5', 'not-due', '2027-11-30'],
  ] as const) {
    const areaId = tag === 'P-4' ? silo : alpha.areaId
    const spot = await aSpot(service, { machine: { areaId }, position: { tag } })
    spots.push(spot)
    await ask(
      owner,
      siteId,
      `insert into grease_due (site_id, id, position_id, area_id, due_on, due_by, estimated, due_soon_on, overdue_on, missed_on, state)
       values ($1, $2, $3, $4, $5, 'hours', false, $5, $5, $5, $6)`,
      [siteId, spot.planId, spot.positionId, areaId, dueOn, state],
    )
  }
  technician = await service.signIn(alpha.people.technician, 'alpha')
  engineer = await service.signIn(alpha.people.engineer, 'alpha')
})
afterAll(async () => {
  mailer?.close()
  await db?.close()
  await server?.close()
})
beforeEach(async () => {
  server.taken.length = 0
  server.refuse = undefined
  server.onTaken = undefined
  await ask(service.owner, service.alpha.siteId, 'delete from mail_digest')
})

const set = (agent: SiteAgent, over: object = {}) => agent.patch('/mail-digest', { ...usual, ...over }).expect(200)
const send = (now = wednesday, where: string | undefined = address) => sendDigests({ db, mailer, address: where }, now)

describe('a mail of what is due', () => {
  it('comes as text and HTML with what is overdue, due and due soon, each with its link', async () => {
    await set(technician)
    expect(await send()).toBe(1)
    const [mail] = server.taken
    expect(mail).toMatchObject({ from: 'book@alpha.example', to: ['technician@alpha.example'] })
    const source = mail?.source ?? ''
    expect(source).toMatch(/^Subject: Greasing at Site alpha: 2 overdue, 1 due, 1 due soon\r$/m)
    const text = mailPart(source, 'text/plain').replaceAll('\r\n', '\n')
    expect(text).toContain(
      `- P-3, Drive side, ${await machineOf(spots[2])} (Gallery): grease with 42 g Marl EP 2, due 2026-11-24\n  ${address}/alpha/positions/${spots[2]?.positionId}`,
    )
    expect(text.match(/^(Overdue|Due|Due soon): \d$/gm)).toEqual(['Overdue: 2', 'Due: 1', 'Due soon: 1'])
    expect(text.match(/^- P-\d/gm)).toEqual(['- P-1', '- P-2', '- P-3', '- P-4'])
    const html = mailPart(source, 'text/html')
    expect(html).toContain(`<a href="${address}/alpha/positions/${spots[0]?.positionId}">P-1</a>`)
    expect(html).toContain('(Silo &lt;north&gt; &amp; &quot;old&quot;)')
    expect(html).not.toContain('P-5')
  })

  it('is plain where nobody has said at which address the book is', async () => {
    await set(technician)
    await sendDigests({ db, mailer, address: undefined }, wednesday)
    const source = server.taken[0]?.source ?? ''
    expect(mailPart(source, 'text/plain')).toContain('- P-1, ')
    expect(source).not.toMatch(/https?:/)
  })

  it('comes once a day, on the chosen days, from the chosen hour of the plant on', async () => {
    await set(technician)
    expect(await send(new Date(wednesday.getTime() - hours))).toBe(0)
    expect(await send()).toBe(1)
    expect(await send(new Date(wednesday.getTime() + hours / 6))).toBe(0)
    expect(await send(new Date(wednesday.getTime() + 17 * hours))).toBe(0)
    expect(await send(new Date(wednesday.getTime() + 24 * hours))).toBe(0)
    expect(await send(new Date(wednesday.getTime() + 5 * 24 * hours))).toBe(1)
    expect((await technician.get('/mail-digest')).body).toMatchObject({ lastSentOn: '2026-11-30', problem: null })
  })

  it('comes later on the same day where the service was off at its hour', async () => {
    await set(technician)
    expect(await send(new Date(wednesday.getTime() + 12 * hours))).toBe(1)
  })

  it('is about the chosen areas only', async () => {
    await set(technician, { areaIds: [silo] })
    await send()
    expect(mailPart(server.taken[0]?.source ?? '', 'text/plain').match(/^- P-\d/gm)).toEqual(['- P-4'])
  })

  it('does not come when nothing is due, unless it was asked for', async () => {
    const empty = randomUUID()
    const { siteId } = service.alpha
    await insert(service.owner, siteId, 'area', [anArea({ siteId, id: empty, code: 'EMP', name: 'Empty' })])
    await set(technician, { areaIds: [empty] })
    await set(engineer, { areaIds: [empty], alsoWhenNothing: true })
    expect(await send()).toBe(1)
    expect(server.taken.map(({ to }) => to)).toEqual([['engineer@alpha.example']])
    expect(server.taken[0]?.source).toContain('nothing is due')
  })

  it('does not go to who is disabled, nor does anything of another site', async () => {
    const { owner, alpha, beta } = service
    const beyond = await service.signIn(beta.people.engineer, 'beta')
    await set(technician)
    await set(beyond, { alsoWhenNothing: true, hour: 0, weekdays: [1, 2, 3, 4, 5, 6, 7] })
    await ask(owner, alpha.siteId, `update person set disabled_at = now() where id = '${alpha.people.technician.id}'`)
    await send()
    expect(server.taken.map(({ to }) => to)).toEqual([['engineer@beta.example']])
    expect(mailPart(server.taken[0]?.source ?? '', 'text/plain')).not.toMatch(/\bP-\d|alpha\//)
    await ask(owner, alpha.siteId, `update person set disabled_at = null where id = '${alpha.people.technician.id}'`)
    await ask(owner, beta.siteId, 'delete from mail_digest')
  })
})

describe('when sending goes wrong', () => {
  it('the person is told, the others get theirs, and it is tried again', async () => {
    await set(technician)
    server.refuse = 'No room today'
    await expect(send()).rejects.toThrow(/1 mail\(s\) of what is due were not sent/)
    expect((await technician.get('/mail-digest')).body).toMatchObject({
      lastSentOn: null,
      problem: expect.stringContaining('No room today'),
    })
    server.refuse = undefined
    expect(await send(new Date(wednesday.getTime() + hours / 6))).toBe(1)
    expect((await technician.get('/mail-digest')).body).toMatchObject({ lastSentOn: '2026-11-25', problem: null })
  })

  it('cut off between the mail and its note it is sent a second time, not lost', async () => {
    await set(technician)
    const { owner, database } = service
    server.onTaken = async () => {
      await owner.query(
        `select pg_terminate_backend(pid) from pg_stat_activity where datname = $1 and usename = 'shaftbook_app' and state = 'idle in transaction'`,
        [database.name],
      )
    }
    await expect(send()).rejects.toThrow(/not sent/)
    server.onTaken = undefined
    expect(await send()).toBe(1)
    expect(await send()).toBe(0)
    expect(server.taken).toHaveLength(2)
  })

  it('two processes at once send it once', async () => {
    await set(technician)
    const counts = await Promise.all([send(), send()])
    expect(counts.toSorted((a, b) => a - b)).toEqual([0, 1])
    expect(server.taken).toHaveLength(1)
  })
})

describe('what a person sets', () => {
  it('is nothing at first, and says that no mail server is set', async () => {
    expect((await engineer.get('/mail-digest').expect(200)).body).toEqual({
      weekdays: [],
      hour: 6,
      areaIds: [],
      alsoWhenNothing: false,
      to: 'engineer@alpha.example',
      lastSentOn: null,
      problem: null,
      mailReady: false,
    })
  })

  it('is kept as it was said, each day and area once, and is his own', async () => {
    const reply = await technician
      .patch('/mail-digest', { weekdays: [5, 1, 5], hour: 0, areaIds: [silo, silo], alsoWhenNothing: true })
      .expect(200)
    expect(reply.body).toMatchObject({ weekdays: [1, 5], hour: 0, areaIds: [silo], alsoWhenNothing: true })
    expect((await technician.get('/mail-digest')).body).toEqual(reply.body)
    expect((await engineer.get('/mail-digest')).body.weekdays).toEqual([])
  })

  it('is refused with a day, an hour or an area that there is not', async () => {
    const refused = (over: object, status: number, code: string, path: string) =>
      expectRefused(technician.patch('/mail-digest', { ...usual, ...over }), status, code, path)
    await refused({ weekdays: [0] }, 400, 'request-invalid', 'weekdays.0')
    await refused({ hour: 24 }, 400, 'request-invalid', 'hour')
    await refused({ areaIds: [service.beta.areaId] }, 404, 'not-found', 'areaIds')
  })
})

async function machineOf(spot: Spot | undefined): Promise<string> {
  const [row] = await ask<{ name: string }>(
    service.owner,
    service.alpha.siteId,
    `select name from machine where id = '${spot?.machineId}'`,
  )
  return row?.name ?? ''
}
