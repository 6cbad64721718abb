import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { aGrease } from '../../seeds/builders/catalogue-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { countStatements } from '../support/statements.ts'
import { aDose, aGun, aRound, aWalk } from './round-work.ts'
import { aMount, ask, aSpot, daysOn, expectNothingWritten, expectRefused, insert, type Spot } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let engineer: SiteAgent
let gun: ReturnType<typeof aGun>
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
  gun = aGun(service.alpha)
  await technician.post('/guns', gun).expect(201)
  // weighed and loaded long before the walks of these tests
  await ask(service.owner, service.alpha.siteId, 'alter table gun disable trigger count_version')
  await ask(service.owner, service.alpha.siteId, `update gun set updated_at = $1`, [service.alpha.meterRead.at])
  await ask(service.owner, service.alpha.siteId, 'alter table gun enable trigger count_version')
})

const at = (hour: number): string => daysOn(service.alpha, 85 + hour / 24)

/** A walk of so many mounted positions, begun. */
async function begun(count: number) {
  const spots: Spot[] = []
  for (let n = 0; n < count; n += 1) {
    const spot = await aSpot(service)
    await technician.post('/mount-records', aMount(service.alpha, { positionId: spot.positionId })).expect(201)
    spots.push(spot)
  }
  const round = aRound(spots.map(({ positionId }) => positionId))
  await engineer.post('/rounds', round).expect(201)
  const walk = aWalk(round, at(0))
  await technician.post('/round-walks', walk).expect(201)
  const record = (body: object) => technician.post(`/round-walks/${walk.id}/results`, body)
  const stopIds = round.stops.map(({ id }) => id)
  return { spots, round, walk, record, stopIds }
}

describe('a walk of a round', () => {
  it('takes the stops along as they were, tells what was done, and what is left open when it ends', async () => {
    const { round, walk, record, stopIds } = await begun(4)
    await engineer.patch(`/rounds/${round.id}`, { stops: [round.stops[3]] }, 1).expect(200)
    await record(
      aDose(stopIds[0]!, at(1), { gun, strokes: 35 }, { oldGrease: 'dark', reliefClosed: true, temperatureC: 48.5 }),
    ).expect(201)
    await record({
      id: randomUUID(),
      stopId: stopIds[1],
      outcome: 'skipped',
      doneAt: at(2),
      reason: 'Guard locked',
    }).expect(201)
    await record({
      id: randomUUID(),
      stopId: stopIds[2],
      outcome: 'checked',
      doneAt: at(3),
      note: 'Dry outside',
    }).expect(201)
    const end = { id: randomUUID(), endedAt: at(4), note: 'Rain came' }
    const ended = (await technician.post(`/round-walks/${walk.id}/finish`, end).expect(201)).body
    expect((await technician.post(`/round-walks/${walk.id}/finish`, end).expect(201)).body).toEqual(ended)
    expect(ended).toMatchObject({
      id: walk.id,
      roundName: round.name,
      startedAt: at(0),
      startedBy: 'technician of alpha',
      endedAt: at(4),
      note: 'Rain came',
    })
    expect(ended.stops.map(({ id }: { id: string }) => id)).toEqual(stopIds)
    expect(ended.stops[0].result).toMatchObject({
      outcome: 'done',
      doseG: 42,
      plannedDoseG: 42,
      strokes: 35,
      gunName: gun.name,
      oldGrease: 'dark',
      reliefClosed: true,
      temperatureC: 48.5,
    })
    const { body: observed } = await technician.get(`/observations?positionId=${ended.stops[0].positionId}`).expect(200)
    expect(observed.items).toMatchObject([
      { temperatureC: 48.5, oldGreaseSeen: true, reliefClosed: true, greasingId: ended.stops[0].result.greasingId },
    ])
    expect(ended.stops[1].result).toMatchObject({ outcome: 'skipped', reason: 'Guard locked', greasingId: null })
    expect(ended.stops[2].result).toMatchObject({ outcome: 'checked', note: 'Dry outside' })
    expect(ended.stops[3].result).toBeNull()
    expect((await technician.get(`/round-walks/${walk.id}`).expect(200)).body).toEqual(ended)
    const [row] = (await technician.get(`/round-walks?roundId=${round.id}`).expect(200)).body.items
    expect(row).toMatchObject({ id: walk.id, stops: 4, done: 1, checked: 1, skipped: 1 })
  })

  it('is begun once, and of a round that is there', async () => {
    const { round, walk } = await begun(1)
    const again = await technician.post('/round-walks', walk).expect(201)
    expect(again.body.id).toBe(walk.id)
    await expectRefused(
      technician.post('/round-walks', { ...aWalk(round, at(0)), roundId: randomUUID() }),
      404,
      'not-found',
      'roundId',
    )
  })

  it('costs as many statements for many stops as for few', async () => {
    const [few, many] = [await begun(1), await begun(4)]
    const read = (id: string) => countStatements(() => technician.get(`/round-walks/${id}`).expect(200))
    expect(await read(many.walk.id)).toBe(await read(few.walk.id))
    const list = (limit: number) => countStatements(() => technician.get(`/round-walks?limit=${limit}`).expect(200))
    expect(await list(50)).toBe(await list(1))
  })
})

describe('a dose at a stop', () => {
  it('becomes a greasing at its own time that knows walk, gun and strokes; the due date follows', async () => {
    const { spots, walk, record, stopIds } = await begun(1)
    const dose = aDose(stopIds[0]!, at(1), { gun, strokes: 35 })
    const first = await record(dose).expect(201)
    expect((await record(dose).expect(201)).body).toEqual(first.body)
    const greasing = (await technician.get(`/greasings/${dose.greasing.id}`).expect(200)).body
    expect(greasing).toMatchObject({ positionId: spots[0]!.positionId, greasedAt: at(1), doseG: 42 })
    const kept = 'select walk_id, stop_id, gun_id, strokes, grams_per_stroke from greasing where id = $1'
    expect(await ask(service.owner, service.alpha.siteId, kept, [dose.greasing.id])).toEqual([
      { walk_id: walk.id, stop_id: stopIds[0], gun_id: gun.id, strokes: 35, grams_per_stroke: 1.2 },
    ])
    const due = (await technician.get(`/due-greasings?search=${spots[0]!.tag}`).expect(200)).body.items
    expect(due).toMatchObject([{ lastGreasedAt: at(1) }])
  })

  it('may be given in grams', async () => {
    const { record, stopIds } = await begun(1)
    const greasing = { id: randomUUID(), greaseId: service.alpha.greaseId, doseG: 40 }
    const reply = await record({
      id: randomUUID(),
      stopId: stopIds[0],
      outcome: 'done',
      doneAt: at(1),
      greasing,
    }).expect(201)
    expect(reply.body).toMatchObject({ doseG: 40, gunName: null, strokes: null })
  })

  it('of another grease than the plan is refused, also from a gun that is loaded with another one', async () => {
    const { siteId } = service.alpha
    const other = aGrease({ siteId, name: `Other ${randomUUID()}` })
    await insert(service.owner, siteId, 'grease', [other])
    const { record, stopIds } = await begun(1)
    await expectNothingWritten(service.owner, siteId, async () => {
      const wrong = aDose(stopIds[0]!, at(1), { gun: { ...gun, greaseId: other.id }, strokes: 35 })
      expect((await expectRefused(record(wrong), 422, 'grease-not-planned', 'greasing.gunId')).detail).toContain(
        gun.name,
      )
      const byWeight = { id: randomUUID(), greaseId: other.id, doseG: 42 }
      const body = { id: randomUUID(), stopId: stopIds[0], outcome: 'done', doneAt: at(1), greasing: byWeight }
      const { detail } = await expectRefused(record(body), 422, 'grease-not-planned', 'greasing.greaseId')
      expect(detail).toContain('greases must not be mixed')
    })
  })

  it('of strokes that were counted with another weight is refused, unless the gun was weighed since', async () => {
    const { record, stopIds } = await begun(1)
    const dose = aDose(stopIds[0]!, at(1), { gun: { ...gun, gramsPerStroke: 1.4 }, strokes: 30 })
    await expectRefused(record(dose), 409, 'gun-changed', 'greasing.gramsPerStroke')
    const newer = aGun(service.alpha, { gramsPerStroke: 1.5 })
    await technician.post('/guns', newer).expect(201)
    const before = aDose(stopIds[0]!, at(1), { gun: { ...newer, gramsPerStroke: 1.4 }, strokes: 30 })
    expect((await record(before).expect(201)).body).toMatchObject({ doseG: 42, strokes: 30 })
  })

  it('of more than 1.5 times the plan needs a yes and a reason, and both stand in the record', async () => {
    const { record, stopIds } = await begun(2)
    // 1.5 x 42 g = 63 g: 52 strokes are 62.4 g, 53 are 63.6 g
    await record(aDose(stopIds[0]!, at(1), { gun, strokes: 52 })).expect(201)
    await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
      const over = aDose(stopIds[1]!, at(1), { gun, strokes: 53 })
      const { detail } = await expectRefused(record(over), 422, 'overdose-not-confirmed', 'overdoseConfirmed')
      expect(detail).toMatch(/^63.6 g is 1.514 times the planned 42 g\./)
      await expectRefused(
        record({ ...over, id: randomUUID(), overdoseConfirmed: true }),
        422,
        'reason-missing',
        'extraReason',
      )
    })
    const meant = { overdoseConfirmed: true, extraReason: 'Old grease was milky' }
    const dose = aDose(stopIds[1]!, at(1), { gun, strokes: 53 }, meant)
    expect((await record(dose).expect(201)).body).toMatchObject({ ...meant, doseG: 63.6, plannedDoseG: 42 })
    const greasing = (await technician.get(`/greasings/${dose.greasing.id}`).expect(200)).body
    expect(greasing).toMatchObject({ windowResult: 'wrong-amount', note: 'Extra dose: Old grease was milky' })
  })

  it('is signed once a stop: a second result is refused', async () => {
    const { record, stopIds } = await begun(1)
    await record(aDose(stopIds[0]!, at(1), { gun, strokes: 35 })).expect(201)
    await expectRefused(record(aDose(stopIds[0]!, at(2), { gun, strokes: 35 })), 409, 'stop-already-done', 'stopId')
  })

  it.each([
    ['skipped without a reason', { outcome: 'skipped' }, 422, 'reason-missing', 'reason'],
    ['done without a dose', { outcome: 'done' }, 422, 'not-allowed-here', 'greasing'],
    ['at a stop that is not of the walk', { outcome: 'checked', stopId: randomUUID() }, 404, 'not-found', 'stopId'],
    ['in the future', { outcome: 'checked', doneAt: '2999-01-01T00:00:00Z' }, 422, 'date-in-future', 'doneAt'],
  ])('is refused where it is %s', async (_, over, status, code, path) => {
    const { record, stopIds } = await begun(1)
    await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
      const body = { id: randomUUID(), stopId: stopIds[0], doneAt: at(1), ...over }
      await expectRefused(record(body), status, code, path)
    })
  })

  it('is signed by who works at the shaft, not by the stores', async () => {
    const { walk, stopIds } = await begun(1)
    const stores = await service.signIn(service.alpha.people.stores, 'alpha')
    const reply = await stores.post(`/round-walks/${walk.id}/results`, aDose(stopIds[0]!, at(1), { gun, strokes: 35 }))
    expect([reply.status, reply.body.code]).toEqual([403, 'role-not-allowed'])
  })
})
