import { allEndpoints } from '@shaftbook/contract/all-endpoints'
import { v7 as newId } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import { inSite } from '../../seeds/builders/in-site.ts'
import { aPosition } from '../../seeds/builders/position-rows.ts'
import { aBearing, aFitment } from '../../seeds/builders/record-rows.ts'
import { aKit, aKitLine, aPart } from '../../seeds/builders/catalogue-rows.ts'
import { aMachine, aShaft } from '../../seeds/builders/site-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { countStatements } from '../support/statements.ts'
import { fillSite } from './full-site.ts'
import { insert } from './shaft-work.ts'

const service = useTestApp()
let manager: SiteAgent
const many = 57

beforeAll(async () => {
  await fillSite(service, service.alpha)
  await addMany()
  manager = await service.signIn(service.alpha.people.manager, 'alpha')
})

/** Machines with a shaft, a position and a fitted bearing each; many share their name, so that sorting meets ties. */
async function addMany(): Promise<void> {
  const { owner, alpha } = service
  const { siteId, areaId, bearingTypeId } = alpha
  const numbers = Array.from({ length: many }, (_, number) => number)
  const machines = numbers.map((n) =>
    aMachine({ siteId, areaId, tag: `FAN-${n}`, name: `Fan ${n % 3}`, standby: n % 5 === 0 }),
  )
  const shafts = machines.map(({ id }) => aShaft({ siteId, machineId: id }))
  const kits = numbers.map((n) => aKit({ siteId, name: `Fan kit ${n}` }))
  const part = aPart({ siteId, number: 'S-4711', designation: 'V ring 90', kind: 'seal', description: '', bin: 'A 3' })
  const lines = kits.map((kit) => aKitLine({ siteId, kitId: kit.id, partId: part.id, lineNumber: 1, quantity: 2 }))
  const positions = shafts.map(({ id }, n) =>
    aPosition({
      siteId,
      shaftId: id,
      bearingTypeId,
      tag: `FAN-${n}-DE`,
      name: 'Drive side',
      kitId: kits[n]?.id ?? null,
    }),
  )
  const bearings = numbers.map((n) => aBearing({ siteId, bearingTypeId, serial: n % 2 === 0 ? `S${n}` : null }))
  const fitments = positions.map((position, n) =>
    aFitment({ siteId, positionId: position.id, bearingId: bearings[n]?.id as string, fittedAt: new Date(2025, 0, 1) }),
  )
  await insert(owner, siteId, 'machine', machines)
  await insert(owner, siteId, 'shaft', shafts)
  await insert(owner, siteId, 'part', [part])
  await insert(owner, siteId, 'kit', kits)
  await insert(owner, siteId, 'kit_line', lines)
  await insert(owner, siteId, 'position', positions)
  await insert(owner, siteId, 'bearing', bearings)
  await insert(owner, siteId, 'fitment', fitments)
  await addFlags(positions.map((position) => position.id))
}

/** Flags of the same urgency, so that only the id tells them apart. */
async function addFlags(positionIds: readonly string[]): Promise<void> {
  const { owner, alpha } = service
  await inSite(owner, alpha.siteId, async () => {
    for (const positionId of positionIds) {
      await owner.query(
        `insert into flag (site_id, id, kind, subject_id, position_id, area_id, since, urgency)
         values ($1, $2, 'no-mount-record', $3, $3, $4, now(), 300)`,
        [alpha.siteId, newId(), positionId, alpha.areaId],
      )
    }
  })
}

type Item = Record<string, unknown> & { id: string }

async function wholeList(path: string, limit: number): Promise<Item[]> {
  const items: Item[] = []
  let cursor: string | null = ''
  while (cursor !== null) {
    const from: string = cursor === '' ? '' : `&cursor=${cursor}`
    const { body } = await manager.get(`${path}${path.includes('?') ? '&' : '?'}limit=${limit}${from}`).expect(200)
    expect(body.items.length).toBeLessThanOrEqual(limit)
    items.push(...body.items)
    cursor = body.nextCursor
  }
  return items
}

describe('paging', () => {
  it.each([
    '/machines?sort=name',
    '/machines?sort=-name',
    '/machines?sort=tag',
    '/shafts?sort=code',
    '/bearings?sort=createdAt',
    '/bearings?sort=-createdAt',
    '/bearings?sort=serial',
    '/positions?sort=-name',
    '/position-board?sort=dueOn',
    '/position-board?sort=-dueOn',
    '/flags',
    '/fitments',
    '/kits',
    '/audit-entries',
  ])('%s goes over ties without losing or repeating a row', async (path) => {
    const [small, large] = [await wholeList(path, 7), await wholeList(path, 200)]
    expect(large.length).toBeGreaterThanOrEqual(many)
    expect(small.map((item) => item.id)).toEqual(large.map((item) => item.id))
    expect(new Set(small.map((item) => item.id)).size).toBe(small.length)
  })

  it('is not upset by a row that is added behind or before the cursor', async () => {
    const first = (await manager.get('/machines?sort=tag&limit=10').expect(200)).body
    const { siteId, areaId } = service.alpha
    await insert(service.owner, siteId, 'machine', [
      aMachine({ siteId, areaId, tag: 'AAA-0' }),
      aMachine({ siteId, areaId, tag: 'ZZZ-0' }),
    ])
    const rest = (await manager.get(`/machines?sort=tag&limit=200&cursor=${first.nextCursor}`).expect(200)).body
    const tags = [...first.items, ...rest.items].map((item: Item) => item['tag'])
    expect(tags).not.toContain('AAA-0')
    expect(tags.at(-1)).toBe('ZZZ-0')
    expect(new Set(tags).size).toBe(tags.length)
  })

  it('says null after the last row, also when the page is exactly full', async () => {
    const { body } = await manager.get('/machines?search=FAN-1&limit=11').expect(200)
    expect([body.items.length, body.nextCursor]).toEqual([11, null])
  })
})

describe('sorting and filtering', () => {
  it.each([
    ['/machines?sort=tag', 'tag', 1],
    ['/machines?sort=-tag', 'tag', -1],
    ['/machines?sort=name', 'name', 1],
    ['/parts?sort=-number', 'number', -1],
    ['/areas?sort=-walkingOrder', 'walkingOrder', -1],
    ['/bearing-types?sort=boreMm', 'boreMm', 1],
  ] as const)('%s runs by %s', async (path, field, direction) => {
    const values = (await wholeList(path, 200)).map((item) => item[field])
    const inDatabase = await inSite(service.owner, service.alpha.siteId, async () => {
      const { rows } = await service.owner.query<{ value: unknown }>(
        `select x.value from jsonb_array_elements($1::jsonb) with ordinality as x(value, n)
         order by case when jsonb_typeof(x.value) = 'number' then x.value::float8 end, x.value #>> '{}'`,
        [JSON.stringify(values)],
      )
      return rows.map((row) => row.value)
    })
    expect(values).toEqual(direction === 1 ? inDatabase : inDatabase.toReversed())
  })

  it('a filter keeps exactly the rows that fit', async () => {
    const standby = await wholeList('/machines?standby=true', 200)
    expect(standby).toHaveLength(12)
    expect(standby.every((item) => item['standby'] === true)).toBe(true)
    expect(await wholeList('/machines?search=fan 2', 200)).toHaveLength(19)
  })

  it.each(['%', '_', '\\', "'"])('a search for "%s" looks for that character', async (search) => {
    expect(await wholeList(`/machines?search=${encodeURIComponent(search)}`, 200)).toEqual([])
  })
})

describe('the number of statements', () => {
  const lists = allEndpoints
    .filter((endpoint) => endpoint.method === 'GET' && endpoint.query !== undefined && 'limit' in endpoint.query.shape)
    .map((endpoint) => [endpoint.name, endpoint.path.replace('/api/v1/sites/:site', '')] as const)

  it.each(lists)('of %s is the same for a page of one row and of many', async (name, path) => {
    const { areaId, locating } = service.alpha
    const at = path.replace(':id', name === 'list-tree-machines' ? areaId : (locating.partIds.sleeve as string))
    const few = await countStatements(() => manager.get(`${at}?limit=1`).expect(200))
    const all = await countStatements(() => manager.get(`${at}?limit=200`).expect(200))
    expect(few).toBeGreaterThan(1)
    expect(all).toBe(few)
    // everything that stands at the positions takes a few more
    expect(all).toBeLessThanOrEqual(name === 'list-position-overviews' ? 14 : 7)
  })

  it('of an overview and of a history is small and does not grow with what stands there', async () => {
    const { id } = service.alpha.locating
    expect(await countStatements(() => manager.get(`/positions/${id}/overview`).expect(200))).toBeLessThanOrEqual(14)
    expect(await countStatements(() => manager.get(`/positions/${id}/history`).expect(200))).toBeLessThanOrEqual(7)
    expect(await countStatements(() => manager.get('/tree').expect(200))).toBeLessThanOrEqual(5)
  })
})
