import { randomUUID } from 'node:crypto'
import supertest from 'supertest'
import { beforeAll, describe, expect, it } from 'vitest'
import { buildApp } from '../../apps/api/src/app.ts'
import { Config } from '../../apps/api/src/config.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aMount, aSpot, daysOn, overReadings, rowCounts } from './shaft-work.ts'

const service = useTestApp()
let manager: SiteAgent
beforeAll(async () => {
  manager = await service.signIn(service.alpha.people.manager, 'alpha')
  await service.owner.query(`
    create function test_break() returns trigger language plpgsql as $$ begin raise exception 'the disk is full of secrets'; end $$;
    create function test_cut_off() returns trigger language plpgsql as $$
      begin perform pg_terminate_backend(pg_backend_pid()); return new; end $$;`)
})

/** Does the work while every write to the table fails: with an error of the database, or with the connection gone. */
async function whileBroken<T>(
  table: string,
  how: 'test_break' | 'test_cut_off',
  work: () => PromiseLike<T>,
): Promise<T> {
  await service.owner.query(
    `create trigger test_breaks after insert or update on "${table}" for each row execute function ${how}()`,
  )
  try {
    return await work()
  } finally {
    await service.owner.query(`drop trigger test_breaks on "${table}"`)
  }
}

interface Request {
  readonly path: string
  readonly body: Record<string, unknown>
  /** Tables written to, in any order: each breaks once. */
  readonly tables: readonly string[]
}

async function requests(): Promise<Request[]> {
  const { alpha } = service
  const spot = await aSpot(service)
  const line = { id: randomUUID(), partId: alpha.locating.partIds.sleeve, quantity: 1 }
  const row = { id: randomUUID(), overMm: 80, inclMm: 100, taper: '1:12', reductionMinUm: 40, reductionMaxUm: 50 }
  return [
    {
      path: '/kits',
      body: { id: randomUUID(), name: 'A kit', lines: [line] },
      tables: ['receipt', 'kit', 'kit_line', 'audit_entry'],
    },
    {
      path: '/maker-charts',
      body: { id: randomUUID(), maker: 'Tarnbeck', document: randomUUID(), edition: '1', rows: [row] },
      tables: ['receipt', 'maker_chart', 'maker_chart_row', 'audit_entry'],
    },
    {
      path: '/positions',
      body: {
        id: randomUUID(),
        shaftId: alpha.shaftId,
        tag: 'BC-01-HD-X',
        name: 'Third',
        locating: true,
        bearingTypeId: alpha.bearingTypeId,
      },
      tables: ['receipt', 'position', 'flag', 'audit_entry'],
    },
    {
      path: '/people',
      body: { id: randomUUID(), name: 'P', email: 'p@alpha.example', password: 'ten letters and more', role: 'stores' },
      tables: ['receipt', 'person', 'membership', 'audit_entry'],
    },
    {
      path: '/mount-records',
      body: aMount(alpha, {
        positionId: spot.positionId,
        readings: overReadings,
        outOfBandReason: 'No other bearing here',
      }),
      tables: ['receipt', 'bearing', 'fitment', 'mount_record', 'mount_reading', 'meter_reading', 'flag', 'grease_due'],
    },
  ]
}

describe.each([
  ['raises an error', 'test_break', [500]],
  ['is cut off', 'test_cut_off', [503]],
] as const)('when the database %s in the middle of a request', (_, how, statuses) => {
  it('nothing is half-written, nothing inside is told, and the same request goes through afterwards', async () => {
    const people = () => service.owner.query('select count(*)::int as people from person')
    for (const { path, body, tables } of await requests()) {
      const before = [await rowCounts(service.owner, service.alpha.siteId), (await people()).rows]
      for (const table of tables) {
        const reply = await whileBroken(table, how, () => manager.post(path, body))
        expect([path, table, statuses.includes(reply.status as never)]).toEqual([path, table, true])
        expect(reply.headers['content-type']).toMatch(/problem\+json/)
        expect(reply.body.detail).toMatch(/Nothing was saved/)
        expect(reply.text).not.toMatch(/secrets|prisma|select|insert|SQL/i)
        expect([await rowCounts(service.owner, service.alpha.siteId), (await people()).rows]).toEqual(before)
      }
      const reply = await manager.post(path, body)
      expect([path, reply.status, reply.body.detail]).toEqual([path, 201, undefined])
      await undo(path, body)
    }
  })
})

/** Makes room for the same names and places in the next round. */
async function undo(path: string, body: Record<string, unknown>): Promise<void> {
  const id = String(body['id'])
  if (path === '/kits') await manager.patch(`/kits/${id}`, { name: `Old kit ${id}` }, 1).expect(200)
  if (path === '/positions') await manager.patch(`/positions/${id}`, { tag: `OLD-${id}` }, 1).expect(200)
  if (path === '/people')
    await service.owner.query('update person set email = $2 where id = $1', [id, `${id}@old.example`])
}

it('a removal that fails in the middle leaves the bearing where it was', async () => {
  const spot = await aSpot(service)
  await manager.post('/mount-records', aMount(service.alpha, { positionId: spot.positionId })).expect(201)
  const overview = async () => (await manager.get(`/positions/${spot.positionId}/overview`)).body
  const before = await overview()
  const removal = {
    id: randomUUID(),
    positionId: spot.positionId,
    removedAt: daysOn(service.alpha, 85),
    meterShowsHours: 2600,
    endKind: 'not-failed',
    observer: 'Ada Brunn',
  }
  const reply = await whileBroken('fitment', 'test_break', () => manager.post('/removals', removal))
  expect(reply.status).toBe(500)
  expect(await overview()).toEqual(before)
})

it('a page that reads while a connection is cut off is told to try again, and the next one works', async () => {
  const { rows } = await service.owner.query<{ pid: number }>(
    `select pid from pg_stat_activity where datname = current_database() and usename = 'shaftbook_app'`,
  )
  for (const { pid } of rows) await service.owner.query('select pg_terminate_backend($1)', [pid])
  const replies = [await manager.get('/areas'), await manager.get('/areas'), await manager.get('/areas')]
  expect(replies.map((reply) => [200, 503].includes(reply.status))).toEqual([true, true, true])
  expect(replies.at(-1)?.status).toBe(200)
})

it('without any database the process still answers, is not ready, and says so to everybody', async () => {
  const settings = { appUrl: 'postgresql://shaftbook_app@127.0.0.1:1/none', log: 'silent', poolSize: 1 }
  const app = await buildApp(Config.parse(settings))
  await app.ready()
  const { email, password } = service.alpha.people.stores
  const replies = [
    await supertest(app.server).get('/api/v1/ready'),
    await supertest(app.server).post('/api/v1/session').send({ email, password }),
    await supertest(app.server).get('/api/v1/sites/alpha/areas').set('cookie', 'shaftbook_session=x'),
  ]
  expect(replies.map((reply) => [reply.status, reply.body.code])).toEqual(replies.map(() => [503, 'not-ready']))
  expect((await supertest(app.server).get('/api/v1/health')).status).toBe(200)
  await app.close()
})
