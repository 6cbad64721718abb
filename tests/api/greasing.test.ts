import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { aGrease } from '../../seeds/builders/catalogue-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import {
  aMount,
  ask,
  aSpot,
  day,
  daysOn,
  expectNothingWritten,
  expectRefused,
  insert,
  plannedRemoval,
  type Spot,
} from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let engineer: SiteAgent
let siteId: string
/** The service's clock stands 500 days after the meter of each spot was read at 1000 h. */
const today = 500
beforeAll(async () => {
  service.setNow(new Date(service.alpha.meterRead.at.getTime() + today * day))
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
  siteId = service.alpha.siteId
})

/** A spot whose bearing was mounted and filled on day 0 at 1000 h: the plan asks for 42 g every 2000 h or 12 months. */
async function aGreasedSpot(over: Parameters<typeof aSpot>[1] = {}): Promise<Spot> {
  const spot = await aSpot(service, over)
  const fill = { greaseId: service.alpha.greaseId, greaseBearingG: 160 }
  const mount = aMount(service.alpha, {
    positionId: spot.positionId,
    mountedAt: daysOn(service.alpha, 0),
    meterShowsHours: 1000,
    ...fill,
  })
  await technician.post('/mount-records', mount).expect(201)
  return spot
}

function aGreasing(spot: Spot, onDay: number, over: Record<string, unknown> = {}) {
  return { id: randomUUID(), positionId: spot.positionId, greasedAt: daysOn(service.alpha, onDay), doseG: 42, ...over }
}

async function grease(spot: Spot, onDay: number, over: Record<string, unknown> = {}) {
  const reply = await technician.post('/greasings', aGreasing(spot, onDay, over))
  expect({ status: reply.status, detail: reply.body.detail }).toEqual({ status: 201, detail: undefined })
  return reply.body
}

function correct(id: string, over: Record<string, unknown>) {
  return technician.post(`/greasings/${id}/corrections`, {
    id: randomUUID(),
    correctionReason: 'Written down wrong',
    doseG: 42,
    ...over,
  })
}

async function dueOf(spot: Spot) {
  const reply = await technician.get('/due-greasings?limit=200').expect(200)
  return reply.body.items.find((item: { positionId: string }) => item.positionId === spot.positionId)
}

async function openFlags(spot: Spot): Promise<string[]> {
  const reply = await technician.get(`/flags?positionId=${spot.positionId}`).expect(200)
  return reply.body.items.map((flag: { kind: string }) => flag.kind).sort()
}

describe('a greasing', () => {
  it('is answered with what was planned and how it was met', async () => {
    const spot = await aGreasedSpot()
    const body = aGreasing(spot, 84, { meterShowsHours: 3000, note: 'Old grease dark' })
    const reply = await technician.post('/greasings', body).expect(201)
    expect(reply.body).toEqual({
      id: body.id,
      positionId: spot.positionId,
      tag: spot.tag,
      planId: spot.planId,
      task: 'regrease',
      kind: 'regreasing',
      greasedAt: body.greasedAt,
      runHours: 3000,
      greaseId: service.alpha.greaseId,
      greaseName: 'Marl EP 2',
      doseG: 42,
      plannedDoseG: 42,
      windowResult: 'met',
      dueOn: daysOn(service.alpha, 84).slice(0, 10),
      note: 'Old grease dark',
      signedAt: daysOn(service.alpha, today),
      signedBy: service.alpha.people.technician.name,
      correctsId: null,
      correctionReason: null,
      withdrawn: false,
    })
    expect((await technician.get(`/greasings/${body.id}`).expect(200)).body).toEqual(reply.body)
  })

  // the window is ±10 % of 2000 h, missed is later than +50 %
  it.each([
    [1799, 'early'],
    [1800, 'met'],
    [2200, 'met'],
    [2201, 'late'],
    [3000, 'late'],
    [3001, 'missed'],
  ])('%d run hours after the one before is %s', async (hours, windowResult) => {
    const spot = await aGreasedSpot()
    expect(await grease(spot, 140, { meterShowsHours: 1000 + hours })).toMatchObject({ windowResult })
  })

  // 12 months are 365 or 366 days: the window is 329 to 402 days, missed from 549 days on
  it.each([
    [300, 'early'],
    [340, 'met'],
    [395, 'met'],
    [410, 'late'],
  ])('of a machine that stands, %d days after the one before, is %s', async (days, windowResult) => {
    const spot = await aGreasedSpot()
    expect(await grease(spot, days, { meterShowsHours: 1001 })).toMatchObject({ windowResult })
  })

  it.each([
    [29.3, 'wrong-amount'],
    [29.4, 'met'],
    [63, 'met'],
    [63.1, 'wrong-amount'],
  ])('of %d g where 42 g are planned is %s (70 to 150 %%)', async (doseG, windowResult) => {
    const spot = await aGreasedSpot()
    expect(await grease(spot, 84, { doseG, meterShowsHours: 3000 })).toMatchObject({ windowResult })
  })

  it('of a bearing that never was greased has no window', async () => {
    const spot = await aSpot(service)
    const mount = { positionId: spot.positionId, mountedAt: daysOn(service.alpha, 0), meterShowsHours: 1000 }
    await technician.post('/mount-records', aMount(service.alpha, mount)).expect(201)
    expect(await openFlags(spot)).toEqual(['never-greased'])
    expect(await grease(spot, 490)).toMatchObject({ windowResult: 'no-window', plannedDoseG: 42 })
    expect(await openFlags(spot)).toEqual([])
  })

  it('without a meter reading goes by the usual hours a day: 24 h for 84 days are 2016 h', async () => {
    const spot = await aGreasedSpot({ machine: { hoursPerDay: 24 } })
    expect(await grease(spot, 84)).toMatchObject({ windowResult: 'met', runHours: null })
    const slow = await aGreasedSpot({ machine: { hoursPerDay: 8 } })
    expect(await grease(slow, 84)).toMatchObject({ windowResult: 'early', runHours: null })
  })

  it('that is logged late lands at its own time: hours between two readings, and the later one stays the last', async () => {
    const spot = await aGreasedSpot()
    await grease(spot, 60, { meterShowsHours: 2440 })
    // half way between 1000 h on day 0 and 2440 h on day 60
    const late = await grease(spot, 30)
    expect(late).toMatchObject({ runHours: 1720, windowResult: 'early', greasedAt: daysOn(service.alpha, 30) })
    const list = await technician.get(`/greasings?positionId=${spot.positionId}`).expect(200)
    expect(list.body.items.map((item: { greasedAt: string }) => item.greasedAt)).toEqual(
      [60, 30, 0].map((on) => daysOn(service.alpha, on)),
    )
    expect(await dueOf(spot)).toMatchObject({ lastGreasedAt: daysOn(service.alpha, 60) })
  })

  it('counts for the bearing that was in: one of the bearing before gives the next no window', async () => {
    const spot = await aGreasedSpot()
    const remount = {
      positionId: spot.positionId,
      mountedAt: daysOn(service.alpha, 100),
      meterShowsHours: 3100,
      removal: plannedRemoval,
    }
    await technician.post('/mount-records', aMount(service.alpha, remount)).expect(201)
    expect(await grease(spot, 84, { meterShowsHours: 3000 })).toMatchObject({ windowResult: 'met' })
    expect(await dueOf(spot)).toMatchObject({ state: 'never-greased', lastGreasedAt: null })
    expect(await grease(spot, 101)).toMatchObject({ windowResult: 'no-window' })
  })
})

describe('a greasing is refused, and nothing of it is written,', () => {
  async function expectGreasingRefused(
    spot: Spot,
    onDay: number,
    over: Record<string, unknown>,
    status: number,
    code: string,
    path: string,
  ) {
    let problem: Awaited<ReturnType<typeof expectRefused>> | undefined
    await expectNothingWritten(service.owner, siteId, async () => {
      problem = await expectRefused(technician.post('/greasings', aGreasing(spot, onDay, over)), status, code, path)
    })
    return problem
  }

  it('where the position is unknown or of another site', async () => {
    const spot = await aGreasedSpot()
    await expectGreasingRefused(spot, 84, { positionId: randomUUID() }, 404, 'not-found', 'positionId')
    await expectGreasingRefused(spot, 84, { positionId: service.beta.locating.id }, 404, 'not-found', 'positionId')
  })

  it('where the grease is not the one of the plan; both are named', async () => {
    const spot = await aGreasedSpot()
    const other = aGrease({ siteId, name: 'Sedge PU 2', thickener: 'polyurea' })
    await insert(service.owner, siteId, 'grease', [other])
    const problem = await expectGreasingRefused(spot, 84, { greaseId: other.id }, 422, 'grease-not-planned', 'greaseId')
    expect(problem?.detail).toContain('Sedge PU 2')
    expect(problem?.detail).toContain('Marl EP 2')
    await expectGreasingRefused(spot, 84, { greaseId: service.beta.greaseId }, 404, 'not-found', 'greaseId')
  })

  it('where the date lies in the future', async () => {
    await expectGreasingRefused(await aGreasedSpot(), today + 1, {}, 422, 'date-in-future', 'greasedAt')
  })

  it('where nothing was fitted at that time', async () => {
    await expectGreasingRefused(await aSpot(service), 84, {}, 422, 'nothing-fitted', 'positionId')
    await expectGreasingRefused(await aGreasedSpot(), -1, {}, 422, 'nothing-fitted', 'positionId')
  })

  it('where the meter would go backwards or ran faster than the clock', async () => {
    const spot = await aGreasedSpot()
    await expectGreasingRefused(spot, 84, { meterShowsHours: 999.9 }, 422, 'meter-backwards', 'meterShowsHours')
    await expectGreasingRefused(
      spot,
      84,
      { meterShowsHours: 1000 + 84 * 24 + 25 },
      422,
      'not-allowed-here',
      'meterShowsHours',
    )
  })

  it.each([0, -5, 20_001])('where the dose is %d g', async (doseG) => {
    await expectGreasingRefused(await aGreasedSpot(), 84, { doseG }, 400, 'request-invalid', 'doseG')
  })

  it('where the database breaks in the middle', async () => {
    const spot = await aGreasedSpot()
    await service.owner.query(`
      create function break_here() returns trigger language plpgsql as $$ begin raise exception 'broken on purpose'; end $$;
      create trigger zz_break_here before insert or update on grease_due for each row execute function break_here()`)
    try {
      await expectNothingWritten(service.owner, siteId, async () => {
        expect((await technician.post('/greasings', aGreasing(spot, 84, { meterShowsHours: 3000 }))).status).toBe(500)
      })
    } finally {
      await service.owner.query('drop function break_here() cascade')
    }
  })
})

describe('the same greasing again', () => {
  it('is answered with the first one, also at the same time; with another body it is refused', async () => {
    const spot = await aGreasedSpot()
    const body = aGreasing(spot, 84, { meterShowsHours: 3000 })
    const replies = await Promise.all([technician.post('/greasings', body), technician.post('/greasings', body)])
    expect(replies.map((reply) => reply.status)).toEqual([201, 201])
    expect(replies[1]?.body).toEqual(replies[0]?.body)
    await expectNothingWritten(service.owner, siteId, async () => {
      await technician.post('/greasings', body).expect(201)
      await expectRefused(technician.post('/greasings', { ...body, doseG: 40 }), 409, 'id-already-used', 'id')
    })
  })
})

describe('flags and due dates', () => {
  it('an overdue position is flagged, and the flag is gone when the greasing is logged', async () => {
    const spot = await aGreasedSpot()
    expect(await openFlags(spot)).toEqual(['greasing-overdue'])
    expect(await dueOf(spot)).toMatchObject({ state: 'missed', dueRunHours: 3000 })
    await grease(spot, today - 1)
    expect(await openFlags(spot)).toEqual([])
    expect(await dueOf(spot)).toMatchObject({ state: 'not-due', lastGreasedAt: daysOn(service.alpha, today - 1) })
  })

  it('a withdrawn greasing brings the flag back', async () => {
    const spot = await aGreasedSpot()
    const { id } = await grease(spot, today - 1)
    const reply = await correct(id, { greasedAt: daysOn(service.alpha, today - 1), withdrawn: true }).expect(201)
    expect(reply.body).toMatchObject({ withdrawn: true, correctsId: id, windowResult: 'no-window' })
    expect(await openFlags(spot)).toEqual(['greasing-overdue'])
    const list = await technician.get(`/greasings?positionId=${spot.positionId}`).expect(200)
    expect(list.body.items.map((item: { kind: string }) => item.kind)).toEqual(['initial-fill'])
  })

  it('a reading of the meter moves them on every position of the machine', async () => {
    const spot = await aGreasedSpot({ machine: { hoursPerDay: 0 } })
    await grease(spot, today - 10, { meterShowsHours: 1001 })
    expect(await dueOf(spot)).toMatchObject({ state: 'not-due', dueRunHours: 3001 })
    const reading = { id: randomUUID(), meterId: spot.meterId, readAt: daysOn(service.alpha, today), shownHours: 1230 }
    await technician.post('/meter-readings', reading).expect(201)
    expect(await dueOf(spot)).toMatchObject({ meterLastTotalHours: 1230, dueBy: 'hours', estimated: true })
  })
})

describe('correcting a greasing', () => {
  it('adds a record that counts from now on and is judged anew', async () => {
    const spot = await aGreasedSpot()
    const first = await grease(spot, 84, { doseG: 420, meterShowsHours: 3000 })
    expect(first.windowResult).toBe('wrong-amount')
    const reply = await correct(first.id, { greasedAt: first.greasedAt, doseG: 42, meterShowsHours: 3000 }).expect(201)
    expect(reply.body).toMatchObject({
      doseG: 42,
      windowResult: 'met',
      runHours: 3000,
      correctsId: first.id,
      correctionReason: 'Written down wrong',
    })
    expect((await technician.get(`/greasings/${first.id}`)).body).toEqual(first)
    const list = await technician.get(`/greasings?positionId=${spot.positionId}`).expect(200)
    expect(list.body.items.map((item: { id: string }) => item.id)).toContain(reply.body.id)
    expect(list.body.items.map((item: { id: string }) => item.id)).not.toContain(first.id)
    const readings = await technician.get(`/meter-readings?meterId=${spot.meterId}`).expect(200)
    expect(readings.body.items.filter((item: { shownHours: number }) => item.shownHours === 3000)).toHaveLength(1)
  })

  it('goes on from the latest record, once, and can move it in time', async () => {
    const spot = await aGreasedSpot()
    const first = await grease(spot, 84)
    const moved = await correct(first.id, { greasedAt: daysOn(service.alpha, 80) }).expect(201)
    await expectNothingWritten(service.owner, siteId, async () => {
      await expectRefused(correct(first.id, { greasedAt: first.greasedAt }), 409, 'already-corrected', 'id')
      await expectRefused(
        correct(moved.body.id, { greasedAt: daysOn(service.alpha, -1) }),
        422,
        'nothing-fitted',
        'positionId',
      )
      await expectRefused(correct(randomUUID(), { greasedAt: first.greasedAt }), 404, 'not-found', 'id')
    })
    expect(await dueOf(spot)).toMatchObject({ lastGreasedAt: daysOn(service.alpha, 80) })
    await correct(moved.body.id, { greasedAt: daysOn(service.alpha, 82) }).expect(201)
    expect(await dueOf(spot)).toMatchObject({ lastGreasedAt: daysOn(service.alpha, 82) })
  })

  it('sent twice is one correction', async () => {
    const spot = await aGreasedSpot()
    const first = await grease(spot, 84)
    const body = { id: randomUUID(), correctionReason: 'Typing slip', greasedAt: first.greasedAt, doseG: 44 }
    const send = () => technician.post(`/greasings/${first.id}/corrections`, body)
    const replies = await Promise.all([send(), send()])
    expect(replies.map((reply) => reply.status)).toEqual([201, 201])
    expect(replies[1]?.body).toEqual(replies[0]?.body)
  })
})

describe('a grease plan', () => {
  function aPlan(spot: Spot, over: Record<string, unknown> = {}) {
    return {
      id: randomUUID(),
      positionId: spot.positionId,
      greaseId: service.alpha.greaseId,
      entry: 'side',
      doseG: 30,
      intervalHours: 500,
      source: 'by-hand',
      ...over,
    }
  }

  it('takes the place of the one before, and due date and flags follow', async () => {
    const spot = await aGreasedSpot({ machine: { hoursPerDay: 24 } })
    await grease(spot, today - 30)
    expect(await openFlags(spot)).toEqual([])
    const body = aPlan(spot, { duty: { loadKn: 12 }, reason: 'Dusty' })
    const reply = await engineer.post('/grease-plans', body).expect(201)
    expect(reply.body).toMatchObject({
      ...body,
      calendarMonths: 12,
      greaseName: 'Marl EP 2',
      endedAt: null,
      version: 1,
    })
    // 30 days at 24 h are 720 h: over 500 h + 10 %
    expect(await openFlags(spot)).toEqual(['greasing-overdue'])
    const plans = await technician.get(`/grease-plans?positionId=${spot.positionId}`).expect(200)
    expect(plans.body.items.map((plan: { id: string }) => plan.id)).toEqual([body.id, spot.planId])
    expect(plans.body.items[1].endedAt).toBe(daysOn(service.alpha, today))
    expect((await technician.get(`/grease-plans/${body.id}`).expect(200)).body).toEqual(reply.body)
    const due = await dueOf(spot)
    expect(due).toMatchObject({ planId: body.id, doseG: 30, intervalHours: 500 })
  })

  it('judges greasings from its own time on only', async () => {
    const spot = await aGreasedSpot()
    const other = aGrease({ siteId, name: 'Fen CaS 1' })
    await insert(service.owner, siteId, 'grease', [other])
    await engineer.post('/grease-plans', aPlan(spot, { greaseId: other.id })).expect(201)
    expect(await grease(spot, 84, { meterShowsHours: 3000 })).toMatchObject({
      planId: spot.planId,
      windowResult: 'met',
      greaseName: 'Marl EP 2',
    })
    expect(await grease(spot, today, { doseG: 30 })).toMatchObject({ greaseName: 'Fen CaS 1', plannedDoseG: 30 })
  })

  it('is made by the engineer, for a position and a grease of the site, with an interval', async () => {
    const spot = await aGreasedSpot()
    expect((await technician.post('/grease-plans', aPlan(spot))).status).toBe(403)
    await expectNothingWritten(service.owner, siteId, async () => {
      const send = (over: object) => engineer.post('/grease-plans', aPlan(spot, { ...over }))
      await expectRefused(send({ positionId: service.beta.locating.id }), 404, 'not-found', 'positionId')
      await expectRefused(send({ greaseId: service.beta.greaseId }), 404, 'not-found', 'greaseId')
      await expectRefused(send({ intervalHours: 0.5 }), 400, 'request-invalid', 'intervalHours')
    })
  })

  it('sent twice is one plan', async () => {
    const spot = await aGreasedSpot()
    const body = aPlan(spot)
    const replies = await Promise.all([engineer.post('/grease-plans', body), engineer.post('/grease-plans', body)])
    expect(replies.map((reply) => reply.status)).toEqual([201, 201])
    const rows = await ask(service.owner, siteId, 'select id from grease_plan where position_id = $1', [
      spot.positionId,
    ])
    expect(rows).toHaveLength(2)
  })

  it('is not needed to log a greasing, but then the grease has to be named', async () => {
    const spot = await aGreasedSpot()
    await ask(service.owner, siteId, 'update grease_plan set ended_at = $2 where id = $1', [
      spot.planId,
      daysOn(service.alpha, 10),
    ])
    await expectRefused(technician.post('/greasings', aGreasing(spot, 84)), 422, 'grease-not-planned', 'greaseId')
    expect(await grease(spot, 84, { greaseId: service.alpha.greaseId })).toMatchObject({
      planId: null,
      plannedDoseG: null,
      windowResult: 'no-window',
    })
  })
})

describe('the due list', () => {
  it('shows the longest due first, page by page, by area, state and text', async () => {
    const first = await technician.get('/due-greasings?limit=5').expect(200)
    expect(first.body.items).toHaveLength(5)
    const second = await technician.get(`/due-greasings?limit=5&cursor=${first.body.nextCursor}`).expect(200)
    const days = [...first.body.items, ...second.body.items].map((item: { dueOn: string }) => item.dueOn)
    expect(days).toEqual(days.toSorted())
    const spot = await aGreasedSpot()
    const found = await technician
      .get(`/due-greasings?search=${spot.tag}&state=missed&areaId=${service.alpha.areaId}`)
      .expect(200)
    expect(found.body.items).toMatchObject([
      { positionId: spot.positionId, tag: spot.tag, areaName: 'Gallery', greaseName: 'Marl EP 2', doseG: 42 },
    ])
    expect((await technician.get(`/due-greasings?search=${spot.tag}&state=not-due`)).body.items).toEqual([])
    expect((await technician.get(`/due-greasings?areaId=${randomUUID()}`)).body.items).toEqual([])
  })
})
