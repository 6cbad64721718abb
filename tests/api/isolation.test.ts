import { randomUUID } from 'node:crypto'
import { allEndpoints } from '@shaftbook/contract/all-endpoints'
import { Client } from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { inSite } from '../../seeds/builders/in-site.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { fillSite } from './full-site.ts'
import { rowCounts } from './shaft-work.ts'

const service = useTestApp()
/** Lists that name no row where a site has little to show. */
const onlyNumbers = ['count-flags', 'read-life-summary', 'read-greasing-forecast', 'read-greasing-compliance']
let manager: SiteAgent
let app: Client
let tables: string[]
/** The ids of every row of a site, by table. */
let alphaIds: Map<string, string[]>
let betaIds: Map<string, string[]>

beforeAll(async () => {
  await fillSite(service, service.alpha)
  await fillSite(service, service.beta)
  manager = await service.signIn(service.alpha.people.manager, 'alpha')
  app = new Client(service.database.appUrl)
  await app.connect()
  tables = await tablesOfSites()
  alphaIds = await idsOf(service.alpha.siteId)
  betaIds = await idsOf(service.beta.siteId)
})
afterAll(() => app?.end())

/** Every table with a site_id, whoever added it. */
async function tablesOfSites(): Promise<string[]> {
  const { rows } = await service.owner.query<{ name: string }>(
    `select c.table_name as name from information_schema.columns c
     join information_schema.tables t using (table_schema, table_name)
     where c.table_schema = 'public' and c.column_name = 'site_id' and t.table_type = 'BASE TABLE' order by 1`,
  )
  return rows.map((row) => row.name)
}

async function idsOf(siteId: string): Promise<Map<string, string[]>> {
  return await inSite(service.owner, siteId, async () => {
    const ids = new Map<string, string[]>()
    for (const table of tables) {
      const column = table === 'membership' ? 'person_id' : 'id'
      const { rows } = await service.owner.query<{ id: string }>(
        `select ${column} as id from "${table}" where site_id = $1`,
        [siteId],
      )
      ids.set(
        table,
        rows.map((row) => row.id),
      )
    }
    return ids
  })
}

describe('through the API, signed in at alpha', () => {
  // what a file shows is looked at in the tests of that file
  const lists = allEndpoints.filter(
    ({ method, path, gives }) => method === 'GET' && gives === undefined && /:site\/[\w-]+$/.test(path),
  )
  const reads = allEndpoints.filter((endpoint) => endpoint.method === 'GET' && endpoint.path.includes(':id'))

  it.each(lists.map((endpoint) => [endpoint.name, endpoint.path.replace('/api/v1/sites/:site', '')]))(
    '%s has rows of alpha and nothing of beta',
    async (name, path) => {
      const reply = await manager.get(`${path}?limit=200`)
      const text = JSON.stringify((reply.status === 200 ? reply : await manager.get(path).expect(200)).body)
      const holds = (ids: Map<string, string[]>): string[] => [...ids.values()].flat().filter((id) => text.includes(id))
      expect(holds(alphaIds).length > 0 || onlyNumbers.includes(name)).toBe(true)
      expect(holds(betaIds)).toEqual([])
      expect(text).not.toMatch(/\bbeta\b/i)
    },
  )

  it.each(reads.map((endpoint) => [endpoint.name, endpoint.path.replace('/api/v1/sites/:site', '')]))(
    '%s finds no row of beta by its id',
    async (_, path) => {
      const ids = [...betaIds.values()].map((ofTable) => ofTable[0] as string)
      const replies = await Promise.all(ids.map((id) => manager.get(path.replace(':id', id))))
      expect(replies.map((reply) => reply.status)).toEqual(ids.map(() => 404))
    },
  )

  it.each([
    ['positions', 'shaftId', 'shaft'],
    ['positions', 'bearingTypeId', 'bearing_type'],
    ['position-board', 'areaId', 'area'],
    ['position-board', 'machineId', 'machine'],
    ['fitments', 'positionId', 'position'],
    ['fitments', 'bearingId', 'bearing'],
    ['mount-records', 'positionId', 'position'],
    ['mount-plans', 'positionId', 'position'],
    ['mount-plans', 'areaId', 'area'],
    ['removals', 'positionId', 'position'],
    ['greasings', 'positionId', 'position'],
    ['grease-plans', 'positionId', 'position'],
    ['grease-changes', 'positionId', 'position'],
    ['observations', 'positionId', 'position'],
    ['due-greasings', 'areaId', 'area'],
    ['round-proposals', 'areaIds', 'area'],
    ['round-walks', 'roundId', 'round'],
    ['guns', 'greaseId', 'grease'],
    ['meter-readings', 'meterId', 'meter'],
    ['photos', 'positionId', 'position'],
    ['photos', 'subjectId', 'position'],
    ['flags', 'areaId', 'area'],
    ['flags', 'positionId', 'position'],
    ['audit-entries', 'rowId', 'position'],
  ])('%s filtered by %s finds nothing with an id of beta', async (list, filter, table) => {
    for (const id of betaIds.get(table) as string[]) {
      const reply = await manager.get(`/${list}?${filter}=${id}`).expect(200)
      expect(reply.body.items).toEqual([])
    }
  })

  it('no change reaches a row of beta, and nothing is written there', async () => {
    const before = await rowCounts(service.owner, service.beta.siteId)
    const changes = allEndpoints.filter((endpoint) => endpoint.method === 'PATCH' && endpoint.path.includes(':id'))
    for (const { path } of changes) {
      for (const [id] of betaIds.values()) {
        const reply = await manager.patch(path.replace('/api/v1/sites/:site', '').replace(':id', id as string), {}, 1)
        expect([path, [400, 404].includes(reply.status)]).toEqual([path, true])
      }
    }
    expect(await rowCounts(service.owner, service.beta.siteId)).toEqual(before)
  })

  it('an id that beta uses can be used at alpha: neither learns of the other', async () => {
    const id = service.beta.areaId
    const made = await manager.post('/areas', { id, code: 'SAME', name: 'Same id' })
    expect(made.status).toBe(201)
    const beta = await service.signIn(service.beta.people.manager, 'beta')
    expect((await beta.get(`/areas/${id}`)).body.name).toBe('Gallery of beta')
  })
})

describe('by raw SQL as the serving role', () => {
  it('every table of sites has rows of both sites, so that the checks below can fail', () => {
    expect(tables.length).toBeGreaterThan(24)
    expect(tables.filter((table) => betaIds.get(table)?.length === 0)).toEqual([])
  })

  it('every table of sites has row-level security', async () => {
    const { rows } = await service.owner.query<{ name: string }>(
      `select relname as name from pg_class where relnamespace = 'public'::regnamespace and relname = any($1)
       and not (relrowsecurity and (relforcerowsecurity or relname = 'membership'))`,
      [tables],
    )
    expect(rows).toEqual([])
  })

  it('with alpha chosen, nothing but alpha is seen', async () => {
    const own = await idsOf(service.alpha.siteId)
    const seen = await inSite(app, service.alpha.siteId, async () => {
      const counts: [string, number, number][] = []
      for (const table of tables) {
        const { rows } = await app.query<{ own: number; other: number }>(
          `select count(*) filter (where site_id = $1)::int as own, count(*) filter (where site_id <> $1)::int as other
           from "${table}"`,
          [service.alpha.siteId],
        )
        counts.push([table, rows[0]?.own ?? -1, rows[0]?.other ?? -1])
      }
      return counts
    })
    expect(seen).toEqual(tables.map((table) => [table, own.get(table)?.length, 0]))
  })

  it('with no site chosen, nothing is seen, also on a connection that had one before', async () => {
    for (const table of [...tables, 'site', 'person']) {
      const column = table === 'membership' ? 'person_id' : 'id'
      const { rows } = await app.query(`select ${column} from "${table}" limit 1`)
      expect([table, rows]).toEqual([table, []])
    }
  })

  it('people and the site are those of the chosen site only; password hashes and sessions are out of reach', async () => {
    await inSite(app, service.alpha.siteId, async () => {
      const people = await app.query<{ email: string }>('select email from person')
      expect(people.rows).toHaveLength(4)
      expect(people.rows.filter((row) => !row.email.endsWith('@alpha.example'))).toEqual([])
      expect((await app.query('select code from site')).rows).toEqual([{ code: 'alpha' }])
    })
    await expect(app.query('select password_hash from person')).rejects.toThrow(/permission denied/)
    await expect(app.query('select * from session')).rejects.toThrow(/permission denied/)
    await expect(app.query('set role shaftbook_owner')).rejects.toThrow(/permission denied/)
  })

  it('with alpha chosen, no row can be written, changed or taken away at beta', async () => {
    const { alpha, beta } = service
    const insert = 'insert into area (site_id, id, code, name) values ($1, $2, $3, $3)'
    await expect(inSite(app, alpha.siteId, () => app.query(insert, [beta.siteId, randomUUID(), 'X']))).rejects.toThrow(
      /row-level security/,
    )
    await inSite(app, alpha.siteId, async () => {
      const moved = await app.query('update area set name = $1 where site_id = $2', ['Mine', beta.siteId])
      const taken = await app.query('delete from kit_line where site_id = $1', [beta.siteId])
      expect([moved.rowCount, taken.rowCount]).toEqual([0, 0])
    })
    await expect(
      inSite(app, alpha.siteId, () => app.query('update area set site_id = $1', [beta.siteId])),
    ).rejects.toThrow(/row-level security|foreign key/)
  })

  it('a signed record and the audit trail cannot be changed by anybody', async () => {
    for (const role of [app, service.owner]) {
      for (const table of [
        'greasing',
        'removal',
        'meter_reading',
        'mount_decision',
        'fitted_part',
        'plan_review',
        'audit_entry',
      ]) {
        await expect(
          inSite(role, service.alpha.siteId, () => role.query(`update ${table} set id = id`)),
        ).rejects.toThrow(/permission denied|never changes/)
      }
    }
  })
})
