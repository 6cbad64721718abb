import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aBearing, aMount, aSpot, daysOn, overReadings, plannedRemoval } from './shaft-work.ts'

const service = useTestApp()
let engineer: SiteAgent
beforeAll(async () => {
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
  const { alpha } = service
  const bearing = aBearing(alpha, { serial: 'TB-90817' })
  await engineer
    .post('/mount-records', aMount(alpha, { bearing, mountedAt: daysOn(alpha, 40), meterShowsHours: 1900 }))
    .expect(201)
  const second = aMount(alpha, {
    bearing: aBearing(alpha, { serial: 'TB-90818' }),
    readings: overReadings,
    outOfBandReason: 'No other bearing here',
    removal: { endKind: 'failed', modeClause: '5.1.2', cause: 'Overload', observer: 'Ada Brunn' },
  })
  await engineer.post('/mount-records', second).expect(201)
  const greasing = { id: randomUUID(), positionId: alpha.locating.id, greasedAt: daysOn(alpha, 82), doseG: 42 }
  await engineer.post('/greasings', { ...greasing, meterShowsHours: 2540 }).expect(201)
})

interface BoardItem {
  tag: string
}

async function tags(query: string): Promise<string[]> {
  const { items } = (await engineer.get(`/position-board?${query}`).expect(200)).body
  return items.map((item: BoardItem) => item.tag)
}

describe('the board', () => {
  it('shows what is fitted, its verdict, the next greasing and the open flags', async () => {
    const { locating, machineTag, areaId, shaftId } = service.alpha
    const { items } = (await engineer.get(`/position-board?search=${locating.tag}`).expect(200)).body
    expect(items).toMatchObject([
      {
        id: locating.id,
        tag: locating.tag,
        locating: true,
        machineTag,
        areaId,
        areaName: 'Gallery',
        shaftId,
        designation: '22220 K/C3',
        fittedAt: daysOn(service.alpha, 80),
        verdict: 'over',
        dueState: 'not-due',
        retired: false,
      },
    ])
    expect(items[0].openFlags).toBeGreaterThanOrEqual(1)
    expect(items[0].dueOn).toMatch(/^\d{4}-\d\d-\d\d$/)
  })

  it('shows an empty position with the bearing type it is meant for', async () => {
    const { nonLocating } = service.alpha
    const { items } = (await engineer.get(`/position-board?search=${nonLocating.tag}`)).body
    expect(items).toMatchObject([{ designation: '22220 K/C3', fittedAt: null, verdict: null, dueOn: null }])
  })

  it('is searched by tag, machine, bearing, serial number and kit part, with spaces and capitals or without', async () => {
    const { locating, nonLocating } = service.alpha
    const both = [locating.tag, nonLocating.tag]
    expect(await tags('search=hd-de')).toEqual([locating.tag])
    expect(await tags('search=BC-01')).toEqual(both)
    expect(await tags('search=belt 1')).toEqual(both)
    expect(await tags('search=22220k/c3')).toEqual(both)
    expect(await tags('search=tb-90818')).toEqual([locating.tag])
    expect(await tags('search=TB-90817')).toEqual([])
    const parts = (await engineer.get('/parts?kind=ring')).body.items
    expect(await tags(`search=${parts[0].number}`)).toEqual([locating.tag])
    expect(await tags(`search=${parts[0].designation.replaceAll(' ', '')}`)).toEqual([locating.tag])
    expect(await tags('search=no such thing')).toEqual([])
  })

  it('is filtered by area, machine, verdict and state of greasing', async () => {
    const { areaId, machineId, locating, nonLocating } = service.alpha
    expect(await tags(`areaId=${areaId}&machineId=${machineId}`)).toEqual([locating.tag, nonLocating.tag])
    expect(await tags(`areaId=${randomUUID()}`)).toEqual([])
    expect(await tags('verdict=over')).toEqual([locating.tag])
    expect(await tags('verdict=inside')).toEqual([])
    expect(await tags('dueState=not-due')).toEqual([locating.tag])
    expect(await tags('dueState=missed')).toEqual([])
  })

  it('by due date has positions without one last, upwards and downwards', async () => {
    const { locating, nonLocating } = service.alpha
    expect(await tags('sort=dueOn')).toEqual([locating.tag, nonLocating.tag])
    expect(await tags('sort=-dueOn')).toEqual([locating.tag, nonLocating.tag])
  })
})

describe('the tree', () => {
  it('has areas in walking order with their machines and open flags counted, then machines with shafts and positions', async () => {
    const { areaId, machineId, shaftId, locating, nonLocating } = service.alpha
    await engineer.post('/areas', { id: randomUUID(), code: 'PIT', name: 'Pits', walkingOrder: 5 }).expect(201)
    const { areas } = (await engineer.get('/tree').expect(200)).body
    expect(areas.map((area: { name: string }) => area.name)).toEqual(['Pits', 'Gallery'])
    expect(areas[1]).toMatchObject({ id: areaId, machines: 1 })
    expect(areas[1].openFlags).toBeGreaterThanOrEqual(1)
    const { items } = (await engineer.get(`/tree/${areaId}`).expect(200)).body
    expect(items).toMatchObject([
      {
        id: machineId,
        shafts: [
          {
            id: shaftId,
            positions: [
              { id: locating.id, verdict: 'over', designation: '22220 K/C3' },
              { id: nonLocating.id, verdict: null, openFlags: 0 },
            ],
          },
        ],
      },
    ])
    await engineer.get(`/tree/${randomUUID()}`).expect(404)
  })
})

describe('a position', () => {
  it('has an overview with everything that stands there today', async () => {
    const { locating, shaftId, machineId, areaId, bearingTypeId, meterId } = service.alpha
    const { body } = await engineer.get(`/positions/${locating.id}/overview`).expect(200)
    expect(body).toMatchObject({
      position: { id: locating.id, version: 1 },
      shaft: { id: shaftId },
      machine: { id: machineId },
      area: { id: areaId },
      bearingType: { id: bearingTypeId },
      meter: { id: meterId, lastTotalHours: 2540, lastReadAt: daysOn(service.alpha, 82) },
      fitment: { serial: 'TB-90818', verdict: 'over', reductionUm: 63, removedAt: null },
      fittedType: { id: bearingTypeId },
      band: { minUm: 45, maxUm: 60, source: { kind: 'generic-guide' } },
      residualMinUm: 50,
      plan: { id: locating.planId, doseG: 42 },
      due: { planId: locating.planId, tag: locating.tag, state: 'not-due', lastGreasedAt: daysOn(service.alpha, 82) },
      kit: { id: locating.kitId },
    })
    expect(body.flags.map((flag: { kind: string }) => flag.kind)).toContain('mount-over')
    expect(body.kit.lines.map((line: { lineNumber: number }) => line.lineNumber)).toEqual([1, 2, 3, 4, 5, 6, 7, 8])
    await engineer.get(`/positions/${randomUUID()}/overview`).expect(404)
  })

  it('that is empty has an overview too', async () => {
    const spot = await aSpot(service, { meter: false })
    const { body } = await engineer.get(`/positions/${spot.positionId}/overview`).expect(200)
    expect(body).toMatchObject({ meter: null, fitment: null, fittedType: null, due: null, flags: [], kit: null })
    const history = (await engineer.get(`/positions/${spot.positionId}/history`).expect(200)).body
    expect(history).toEqual({ from: null, fitments: [], greasings: [], olderGreasingsLeftOut: false })
  })

  it('has a history of all stays and greasings, the newest first, from the first of them on', async () => {
    const { locating } = service.alpha
    const { body } = await engineer.get(`/positions/${locating.id}/history`).expect(200)
    expect(body.fitments).toMatchObject([
      { serial: 'TB-90818', verdict: 'over', removedAt: null, endKind: null },
      {
        serial: 'TB-90817',
        verdict: 'inside',
        removedAt: daysOn(service.alpha, 80),
        endKind: 'failed',
        modeClause: '5.1.2',
        modeTerm: 'Subsurface initiated fatigue',
        cause: 'Overload',
        runHours: 600,
      },
    ])
    expect(body.greasings.at(0)).toMatchObject({ greasedAt: daysOn(service.alpha, 82), doseG: 42 })
    expect(body.from).toBe(daysOn(service.alpha, 40))
    const fitment = (await engineer.get(`/fitments/${body.fitments[1].id}`).expect(200)).body
    expect(fitment).toEqual(body.fitments[1])
    const open = (await engineer.get(`/fitments?positionId=${locating.id}&open=true`)).body.items
    expect(open).toEqual([body.fitments[0]])
    const ofBearing = (await engineer.get(`/fitments?bearingId=${fitment.bearingId}&open=false`)).body.items
    expect(ofBearing).toEqual([fitment])
  })

  it('that carries a bearing cannot be retired; an empty one can, and leaves tree and part lists', async () => {
    const { locating } = service.alpha
    const { version } = (await engineer.get(`/positions/${locating.id}`)).body
    const now = new Date().toISOString()
    const refused = await engineer.patch(`/positions/${locating.id}`, { retiredAt: now }, version)
    expect([refused.status, refused.body.fields[0].path]).toEqual([422, 'retiredAt'])
    expect(refused.body.detail).toMatch(/log its removal first/)
    const spot = await aSpot(service)
    const future = new Date(Date.now() + 86_400_000).toISOString()
    const early = await engineer.patch(`/positions/${spot.positionId}`, { retiredAt: future }, 1)
    expect(early.body.code).toBe('date-in-future')
    await engineer.patch(`/positions/${spot.positionId}`, { retiredAt: now }, 1).expect(200)
    const tree = (await engineer.get(`/tree/${service.alpha.areaId}`)).text
    expect(tree).not.toContain(spot.positionId)
    const mount = aMount(service.alpha, { positionId: spot.positionId })
    expect((await engineer.post('/mount-records', mount)).status).toBe(422)
  })

  it('moved to another shaft brings the flags of both shafts up to date', async () => {
    const [from, to] = [await aSpot(service), await aSpot(service)]
    const read = async (id: string) => (await engineer.get(`/positions/${id}`)).body
    const shaftId = (await read(to.positionId)).shaftId
    const old = await read(from.positionId)
    await engineer.patch(`/positions/${from.positionId}`, { shaftId }, old.version).expect(200)
    const several = (await engineer.get('/flags?kind=several-locating')).body.items
    expect(several).toMatchObject([{ shaftId, facts: { locatingTags: [from.tag, to.tag].toSorted() } }])
    expect((await engineer.get('/flags?kind=no-locating')).body.items).toEqual([])
    await engineer.patch(`/positions/${from.positionId}`, { shaftId: old.shaftId }, old.version + 1).expect(200)
    expect((await engineer.get('/flags?kind=several-locating')).body.items).toEqual([])
  })
})

describe('a change of the machine', () => {
  it('of its hours a day brings the due dates of its positions up to date', async () => {
    const spot = await aSpot(service, { meter: false })
    await engineer
      .post(
        '/mount-records',
        aMount(service.alpha, { positionId: spot.positionId, noHoursReason: 'No meter here', meterShowsHours: null }),
      )
      .expect(201)
    const greasing = { id: randomUUID(), positionId: spot.positionId, greasedAt: daysOn(service.alpha, 85), doseG: 42 }
    await engineer.post('/greasings', greasing).expect(201)
    const dueOn = async () => (await engineer.get(`/positions/${spot.positionId}/overview`)).body.due.dueOn
    const before = await dueOn()
    const machine = (await engineer.get(`/machines/${spot.machineId}`)).body
    await engineer.patch(`/machines/${machine.id}`, { hoursPerDay: 12 }, machine.version).expect(200)
    const after = await dueOn()
    // 2000 h at 24 h a day are 84 days, at 12 h a day 167 days
    expect((Date.parse(after) - Date.parse(before)) / 86_400_000).toBe(83)
    await engineer.post('/removals', {
      id: randomUUID(),
      positionId: spot.positionId,
      removedAt: daysOn(service.alpha, 86),
      noHoursReason: 'No meter here',
      ...plannedRemoval,
    })
  })
})

describe('what hours are counted on', () => {
  const moved = async (path: string, change: object) => {
    const { version } = (await engineer.get(path)).body
    return await engineer.patch(path, change, version)
  }

  it('a position or shaft whose bearing was mounted at hours of its machine stays there until it is out', async () => {
    const [from, to] = [await aSpot(service), await aSpot(service)]
    const mount = aMount(service.alpha, { positionId: from.positionId })
    await engineer.post('/mount-records', mount).expect(201)
    const shaftOf = async ({ positionId }: typeof from) => (await engineer.get(`/positions/${positionId}`)).body.shaftId
    const [fromShaft, toShaft] = [await shaftOf(from), await shaftOf(to)]
    const machineId = randomUUID()
    const machine = { id: machineId, areaId: service.alpha.areaId, tag: 'Bare frame', name: 'Bare frame', kind: 'Fan' }
    await engineer.post('/machines', machine).expect(201)
    const tries = [
      await moved(`/positions/${from.positionId}`, { shaftId: toShaft }),
      await moved(`/shafts/${fromShaft}`, { machineId }),
    ]
    expect(tries.map((reply) => [reply.status, reply.body.fields[0].path])).toEqual([
      [422, 'shaftId'],
      [422, 'machineId'],
    ])
    for (const { body } of tries) expect(body.detail).toContain(from.tag)
    const removal = { id: randomUUID(), positionId: from.positionId, removedAt: daysOn(service.alpha, 85) }
    await engineer.post('/removals', { ...removal, meterShowsHours: 2600, ...plannedRemoval }).expect(201)
    expect((await moved(`/positions/${from.positionId}`, { shaftId: toShaft })).status).toBe(200)
    expect((await moved(`/shafts/${fromShaft}`, { machineId })).status).toBe(200)
  })

  it('a meter that was read stays at its machine, one that was not may move', async () => {
    const [from, to] = [await aSpot(service), await aSpot(service, { meter: false })]
    const refused = await moved(`/meters/${from.meterId}`, { machineId: to.machineId })
    expect([refused.status, refused.body.fields[0].path]).toEqual([422, 'machineId'])
    const id = randomUUID()
    const other = await aSpot(service, { meter: false })
    await engineer.post('/meters', { id, machineId: to.machineId, name: 'New meter' }).expect(201)
    expect((await moved(`/meters/${id}`, { machineId: other.machineId })).status).toBe(200)
  })
})
