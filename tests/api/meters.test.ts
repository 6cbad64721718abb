import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import {
  aMount,
  ask,
  aSpot,
  daysOn,
  expectNothingWritten,
  expectRefused,
  plannedRemoval,
  type Spot,
} from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let siteId: string
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  siteId = service.alpha.siteId
})

function aReading(spot: Spot, onDay: number, shownHours: number, over: Record<string, unknown> = {}) {
  return { id: randomUUID(), meterId: spot.meterId, readAt: daysOn(service.alpha, onDay), shownHours, ...over }
}

function anExchange(spot: Spot, onDay: number, shownHours: number, newMeterShowsHours: number) {
  return aReading(spot, onDay, shownHours, { kind: 'exchange', newMeterShowsHours })
}

async function enter(body: object) {
  const reply = await technician.post('/meter-readings', body)
  expect({ status: reply.status, detail: reply.body.detail }).toEqual({ status: 201, detail: undefined })
  return reply.body
}

async function expectReadingRefused(body: object, status: number, code: string, path: string) {
  await expectNothingWritten(service.owner, siteId, () =>
    expectRefused(technician.post('/meter-readings', body), status, code, path),
  )
}

function correct(id: string, shownHours: number, over: object = {}) {
  return technician.post(`/meter-readings/${id}/corrections`, {
    id: randomUUID(),
    correctionReason: 'Misread',
    shownHours,
    ...over,
  })
}

async function meterOf(spot: Spot) {
  const text = 'select last_read_at, last_total_hours from meter where id = $1'
  return (await ask<{ last_read_at: Date; last_total_hours: number }>(service.owner, siteId, text, [spot.meterId]))[0]
}

describe('a meter reading', () => {
  it('is kept with the hours of the machine, and the meter knows its newest', async () => {
    const spot = await aSpot(service)
    const body = aReading(spot, 50, 2100.5)
    expect(await enter(body)).toEqual({
      ...body,
      kind: 'reading',
      newMeterShowsHours: null,
      totalHours: 2100.5,
      readBy: service.alpha.people.technician.name,
      correctsId: null,
      correctionReason: null,
    })
    expect(await meterOf(spot)).toEqual({ last_read_at: new Date(body.readAt), last_total_hours: 2100.5 })
  })

  it('that is entered late goes between its neighbours and is not the newest', async () => {
    const spot = await aSpot(service)
    await enter(aReading(spot, 50, 2100))
    await expectReadingRefused(aReading(spot, 20, 2101), 422, 'not-allowed-here', 'shownHours')
    await expectReadingRefused(aReading(spot, 49, 2101), 422, 'meter-backwards', 'shownHours')
    await enter(aReading(spot, 20, 1400))
    await expectReadingRefused(aReading(spot, 30, 1399), 422, 'meter-backwards', 'shownHours')
    // before the first reading, which showed 1000 h
    await enter(aReading(spot, -10, 900))
    await expectReadingRefused(aReading(spot, -5, 1001), 422, 'meter-backwards', 'shownHours')
    expect(await meterOf(spot)).toMatchObject({ last_total_hours: 2100 })
    const list = await technician.get(`/meter-readings?meterId=${spot.meterId}`).expect(200)
    expect(list.body.items.map((item: { totalHours: number }) => item.totalHours)).toEqual([2100, 1400, 1000, 900])
  })

  it('may show the same as before', async () => {
    const spot = await aSpot(service)
    expect(await enter(aReading(spot, 50, 1000))).toMatchObject({ totalHours: 1000 })
  })

  it('is refused where it goes backwards, runs faster than the clock, lies in the future or has no meter here', async () => {
    const spot = await aSpot(service)
    await expectReadingRefused(aReading(spot, 50, 999.9), 422, 'meter-backwards', 'shownHours')
    // 50 days are 1200 h; a day's grace for the time of day
    await expectReadingRefused(aReading(spot, 50, 2224.1), 422, 'not-allowed-here', 'shownHours')
    await expectReadingRefused(aReading(spot, 91, 2000), 422, 'date-in-future', 'readAt')
    await expectReadingRefused(aReading(spot, 50, 2000, { meterId: service.beta.meterId }), 404, 'not-found', 'meterId')
    await expectReadingRefused(aReading(spot, 50, -1), 400, 'request-invalid', 'shownHours')
    await enter(aReading(spot, 50, 2224))
  })

  it('sent twice, or twice at once, is one reading', async () => {
    const spot = await aSpot(service)
    const body = aReading(spot, 50, 2000)
    const replies = await Promise.all([
      technician.post('/meter-readings', body),
      technician.post('/meter-readings', body),
    ])
    expect(replies.map((reply) => reply.status)).toEqual([201, 201])
    expect(replies[1]?.body).toEqual(replies[0]?.body)
    await expectReadingRefused({ ...body, shownHours: 2001 }, 409, 'id-already-used', 'id')
  })

  it('of a machine that never stands, early on one day and late on another, gives a due date', async () => {
    const spot = await aSpot(service)
    const mount = { positionId: spot.positionId, mountedAt: daysOn(service.alpha, 1), meterShowsHours: 1000 }
    const fill = { greaseId: service.alpha.greaseId, greaseBearingG: 160 }
    await technician.post('/mount-records', aMount(service.alpha, { ...mount, ...fill })).expect(201)
    // 10 days and the day's grace: 26.4 h a day by whole days
    expect(await enter(aReading(spot, 11, 1264))).toMatchObject({ totalHours: 1264 })
    const due = await technician.get(`/due-greasings?search=${spot.tag}`).expect(200)
    expect(due.body.items).toMatchObject([{ positionId: spot.positionId, dueBy: 'hours' }])
  })

  it('of two people at once keeps the order', async () => {
    const spot = await aSpot(service)
    const replies = await Promise.all([
      technician.post('/meter-readings', aReading(spot, 50, 2000)),
      technician.post('/meter-readings', aReading(spot, 51, 1990)),
    ])
    expect(replies.map((reply) => reply.status).toSorted((a, b) => a - b)).toEqual([201, 422])
  })
})

describe('an exchange of the meter', () => {
  it('lets the hours of the machine run on', async () => {
    const spot = await aSpot(service)
    await expectReadingRefused(aReading(spot, 60, 120), 422, 'meter-backwards', 'shownHours')
    expect(await enter(anExchange(spot, 50, 2000, 5))).toMatchObject({ totalHours: 2000, newMeterShowsHours: 5 })
    expect(await enter(aReading(spot, 60, 120))).toMatchObject({ totalHours: 2115 })
    await expectReadingRefused(aReading(spot, 61, 119), 422, 'meter-backwards', 'shownHours')
    // a mount goes by the machine's hours, not by what the new meter shows
    const mount = aMount(service.alpha, {
      positionId: spot.positionId,
      mountedAt: daysOn(service.alpha, 65),
      meterShowsHours: 140,
    })
    const reply = await technician.post('/mount-records', mount).expect(201)
    expect(reply.body.runHours).toBe(2135)
  })

  it('says where the new meter starts, and a reading does not', async () => {
    const spot = await aSpot(service)
    await expectReadingRefused(
      aReading(spot, 50, 2000, { kind: 'exchange' }),
      400,
      'request-invalid',
      'newMeterShowsHours',
    )
    await expectReadingRefused(
      aReading(spot, 50, 2000, { newMeterShowsHours: 0 }),
      400,
      'request-invalid',
      'newMeterShowsHours',
    )
  })

  it('is not put before a reading that counts from the old meter', async () => {
    const spot = await aSpot(service)
    await enter(aReading(spot, 60, 2200))
    await expectReadingRefused(anExchange(spot, 50, 2000, 0), 422, 'not-allowed-here', 'newMeterShowsHours')
    // a new meter that was set to where the old one stopped changes nothing
    await enter(anExchange(spot, 50, 2000, 2000))
  })

  it('is corrected as long as nothing counts from it', async () => {
    const spot = await aSpot(service)
    const exchange = await enter(anExchange(spot, 50, 2000, 0))
    const corrected = await correct(exchange.id, 1990).expect(201)
    expect(corrected.body).toMatchObject({ kind: 'exchange', totalHours: 1990, newMeterShowsHours: 0 })
    expect(await enter(aReading(spot, 60, 100))).toMatchObject({ totalHours: 2090 })
    await expectRefused(correct(corrected.body.id, 1980), 422, 'not-allowed-here', 'shownHours')
  })
})

describe('a display that rolls over', () => {
  it('counts on where the meter is known to, within what the clock allows', async () => {
    const spot = await aSpot(service, { rolloverAtHours: 2000 })
    await enter(aReading(spot, 30, 1700))
    // 300 h to the end of the display, and 150 h more
    expect(await enter(aReading(spot, 50, 150))).toMatchObject({ totalHours: 2150 })
    // once round again would be 1990 h in 10 days
    await expectReadingRefused(aReading(spot, 60, 140), 422, 'meter-backwards', 'shownHours')
    expect(await enter(aReading(spot, 60, 300))).toMatchObject({ totalHours: 2300 })
  })
})

describe('correcting a meter reading', () => {
  it('adds a reading of the same moment that counts from now on', async () => {
    const spot = await aSpot(service)
    const wrong = await enter(aReading(spot, 50, 2150))
    await expectReadingRefused(aReading(spot, 55, 2100), 422, 'meter-backwards', 'shownHours')
    const reply = await correct(wrong.id, 2015).expect(201)
    expect(reply.body).toMatchObject({
      readAt: wrong.readAt,
      shownHours: 2015,
      totalHours: 2015,
      correctsId: wrong.id,
      correctionReason: 'Misread',
    })
    expect(await meterOf(spot)).toMatchObject({ last_total_hours: 2015 })
    await enter(aReading(spot, 55, 2100))
    const list = await technician.get(`/meter-readings?meterId=${spot.meterId}`).expect(200)
    expect(list.body.items.map((item: { shownHours: number }) => item.shownHours)).toEqual([2100, 2015, 1000])
  })

  it('stays between its neighbours, goes on from the latest, and is made once', async () => {
    const spot = await aSpot(service)
    const wrong = await enter(aReading(spot, 50, 2000))
    await enter(aReading(spot, 60, 2200))
    await expectNothingWritten(service.owner, siteId, async () => {
      await expectRefused(correct(wrong.id, 2201), 422, 'meter-backwards', 'shownHours')
      await expectRefused(correct(wrong.id, 999), 422, 'meter-backwards', 'shownHours')
      await expectRefused(correct(randomUUID(), 2100), 404, 'not-found', 'id')
    })
    const id = randomUUID()
    const replies = await Promise.all([correct(wrong.id, 2100, { id }), correct(wrong.id, 2100, { id })])
    expect(replies.map((reply) => reply.status)).toEqual([201, 201])
    await expectRefused(correct(wrong.id, 2050), 409, 'already-corrected', 'id')
    expect((await correct(id, 2050).expect(201)).body.totalHours).toBe(2050)
  })
})

describe('correcting the reading of a mount', () => {
  it('lets the run hours of the stays that began and ended with it follow', async () => {
    const spot = await aSpot(service)
    const { positionId } = spot
    const first = { positionId, mountedAt: daysOn(service.alpha, 40), meterShowsHours: 1900 }
    await technician.post('/mount-records', aMount(service.alpha, first)).expect(201)
    const second = { positionId, mountedAt: daysOn(service.alpha, 60), meterShowsHours: 2280, removal: plannedRemoval }
    await technician.post('/mount-records', aMount(service.alpha, second)).expect(201)
    const list = await technician.get(`/meter-readings?meterId=${spot.meterId}`).expect(200)
    const wrong = list.body.items.find((item: { shownHours: number }) => item.shownHours === 2280)
    await correct(wrong.id, 2208).expect(201)
    const text =
      'select start_run_hours, end_run_hours, run_hours from fitment where position_id = $1 order by fitted_at'
    expect(await ask(service.owner, siteId, text, [positionId])).toEqual([
      { start_run_hours: 1900, end_run_hours: 2208, run_hours: 308 },
      { start_run_hours: 2208, end_run_hours: null, run_hours: null },
    ])
  })
})

describe('the list of meter readings', () => {
  it('goes page by page, newest first', async () => {
    const spot = await aSpot(service)
    for (const onDay of [10, 20, 30]) await enter(aReading(spot, onDay, 1000 + onDay * 20))
    const first = await technician.get(`/meter-readings?meterId=${spot.meterId}&limit=3`).expect(200)
    const rest = await technician
      .get(`/meter-readings?meterId=${spot.meterId}&limit=3&cursor=${first.body.nextCursor}`)
      .expect(200)
    const shown = [...first.body.items, ...rest.body.items].map((item: { shownHours: number }) => item.shownHours)
    expect(shown).toEqual([1600, 1400, 1200, 1000])
    expect(rest.body.nextCursor).toBeNull()
  })
})
