import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { openDatabase } from '../../apps/api/src/db/database.ts'
import { turnOfDay } from '../../apps/api/src/jobs/turn-of-day.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aMount, ask, aSpot, day, daysOn, type Spot } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
const at = (days: number): Date => new Date(service.alpha.meterRead.at.getTime() + days * day)
beforeAll(async () => {
  service.setNow(at(200))
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
})

async function aFilledSpot(): Promise<Spot & { machineTag: string; meterName: string }> {
  const spot = await aSpot(service)
  const fill = { greaseId: service.alpha.greaseId, greaseBearingG: 160 }
  const mount = { positionId: spot.positionId, mountedAt: daysOn(service.alpha, 0), meterShowsHours: 1000, ...fill }
  await technician.post('/mount-records', aMount(service.alpha, mount)).expect(201)
  const machine = (await technician.get(`/machines/${spot.machineId}`).expect(200)).body
  const meter = (await technician.get(`/meters/${spot.meterId}`).expect(200)).body
  return { ...spot, machineTag: machine.tag, meterName: meter.name }
}

const line = (onDay: number, shownHours: number, over: Record<string, unknown>) => ({
  id: randomUUID(),
  readAt: daysOn(service.alpha, onDay),
  shownHours,
  ...over,
})
const send = (readings: object[]) => technician.post('/meter-readings/batch', { readings })

async function dueOf(spot: Spot) {
  return (await technician.get(`/positions/${spot.positionId}/overview`).expect(200)).body.due
}

describe('a batch of readings', () => {
  it('takes each line by itself: a bad one loses nothing else, and due dates follow', async () => {
    const [one, two] = [await aFilledSpot(), await aFilledSpot()]
    const reply = await send([
      line(100, 2000, { machineTag: one.machineTag.toLowerCase() }),
      line(100, 900, { meterId: two.meterId }),
      line(150, 2500, { meterId: one.meterId }),
      line(150, 1900, { meterId: two.meterId }),
      line(150, 1, { machineTag: 'NOWHERE' }),
      line(150, 1, {}),
      line(300, 9000, { meterId: two.meterId }),
    ]).expect(200)
    expect(reply.body).toMatchObject({ taken: 3, refused: 4 })
    expect(
      reply.body.lines.map(({ outcome, code, field, totalHours }: Record<string, unknown>) => [
        outcome,
        code,
        field,
        totalHours,
      ]),
    ).toEqual([
      ['taken', null, null, 2000],
      ['refused', 'meter-backwards', 'shownHours', null],
      ['taken', null, null, 2500],
      ['taken', null, null, 1900],
      ['refused', 'not-found', 'machineTag', null],
      ['refused', 'not-allowed-here', 'machineTag', null],
      ['refused', 'date-in-future', 'readAt', null],
    ])
    for (const { sentence } of reply.body.lines.slice(4)) expect(sentence).toMatch(/\w+ \w+/)
    // 500 h left at 10 h a day: 2000 h after 1000 h is 3000 h, from 2500 h on day 150
    expect(await dueOf(one)).toMatchObject({ dueRunHours: 3000, meterLastTotalHours: 2500 })
    expect(await dueOf(two)).toMatchObject({ dueRunHours: 3000, meterLastTotalHours: 1900 })
  })

  it('is taken once, however often it is sent', async () => {
    const spot = await aFilledSpot()
    const readings = [line(50, 1500, { meterId: spot.meterId }), line(60, 1600, { meterId: spot.meterId })]
    const first = await send(readings).expect(200)
    expect((await send(readings).expect(200)).body).toEqual(first.body)
    const changed = await send([{ ...readings[0], shownHours: 1501 }]).expect(200)
    expect(changed.body.lines).toMatchObject([{ outcome: 'refused', code: 'id-already-used', field: 'id' }])
    const rows = await ask(service.owner, service.alpha.siteId, 'select id from meter_reading where meter_id = $1', [
      spot.meterId,
    ])
    expect(rows).toHaveLength(3)
  })

  it('a line that was refused can be sent again once what was wrong is put right', async () => {
    const spot = await aFilledSpot()
    const wrong = line(50, 500, { meterId: spot.meterId })
    expect((await send([wrong]).expect(200)).body).toMatchObject({ taken: 0, refused: 1 })
    expect((await send([{ ...wrong, shownHours: 1500 }]).expect(200)).body).toMatchObject({ taken: 1, refused: 0 })
  })

  it('knows a meter by its own name together with the machine', async () => {
    const spot = await aFilledSpot()
    const named = { machineTag: spot.machineTag, meterName: spot.meterName }
    expect((await send([line(50, 1500, named)]).expect(200)).body).toMatchObject({ taken: 1 })
    const other = await send([line(51, 1510, { machineTag: spot.machineTag, meterName: 'Another' })]).expect(200)
    expect(other.body.lines).toMatchObject([{ code: 'not-found' }])
  })

  it('takes an exchange in its place', async () => {
    const spot = await aFilledSpot()
    const reply = await send([
      line(70, 50, { meterId: spot.meterId }),
      line(60, 1600, { meterId: spot.meterId, kind: 'exchange', newMeterShowsHours: 0 }),
      line(65, 20, { meterId: spot.meterId, newMeterShowsHours: 3 }),
    ]).expect(200)
    expect(reply.body.lines.map(({ totalHours, field }: Record<string, unknown>) => totalHours ?? field)).toEqual([
      1650,
      1600,
      'newMeterShowsHours',
    ])
  })

  it('has 1 to 500 lines', async () => {
    expect((await send([])).status).toBe(400)
    expect((await send(Array.from({ length: 501 }, () => line(1, 1, { machineTag: 'X' })))).status).toBe(400)
  })

  it('takes many lines of one meter at once', async () => {
    const spot = await aFilledSpot()
    const many = Array.from({ length: 120 }, (_, n) => line(n + 1, 1000 + 10 * (n + 1), { meterId: spot.meterId }))
    const reply = await send(many).expect(200)
    expect(reply.body).toMatchObject({ taken: 120, refused: 0 })
    expect(await dueOf(spot)).toMatchObject({ meterLastTotalHours: 2200 })
  })
})

describe('an estimated due date', () => {
  it('follows the average of the last 90 days though nobody reads the meter any more', async () => {
    const db = openDatabase({ appUrl: service.database.appUrl, poolSize: 2, onError: () => undefined })
    const spot = await aFilledSpot()
    service.setNow(at(100))
    // 2 h a day until day 60, then 20 h a day
    await send([line(60, 1120, { meterId: spot.meterId }), line(100, 1920, { meterId: spot.meterId })]).expect(200)
    const before = await dueOf(spot)
    service.setNow(at(151))
    await turnOfDay(db, at(151))
    const after = await dueOf(spot)
    // of the last 90 days (from day 61) one reading is left: the register's own estimate is taken
    expect(after.dueOn).not.toBe(before.dueOn)
    expect(after.dueRunHours).toBe(before.dueRunHours)
    const stored = await ask<{ day: string }>(
      service.owner,
      service.alpha.siteId,
      'select worked_out_on::text as day from grease_due where position_id = $1',
      [spot.positionId],
    )
    expect(stored).toEqual([{ day: at(151).toISOString().slice(0, 10) }])
    await db.close()
    service.setNow(at(200))
  })
})

describe('the board of hour meters', () => {
  it('says what each showed last: a corrected reading no more, and after an exchange where the new one starts', async () => {
    const machineTag = `BRD-${randomUUID().slice(0, 8)}`
    const { meterId } = await aSpot(service, { machine: { tag: machineTag } })
    const board = async () => (await technician.get(`/meter-board?search=${machineTag}`).expect(200)).body.items
    const reading = { id: randomUUID(), meterId, readAt: daysOn(service.alpha, 10), shownHours: 1200 }
    await technician.post('/meter-readings', reading).expect(201)
    expect(await board()).toMatchObject([{ id: meterId, machineTag, lastShownHours: 1200, lastReadAt: reading.readAt }])
    const correction = { id: randomUUID(), correctionReason: 'two digits swapped', shownHours: 1020 }
    await technician.post(`/meter-readings/${reading.id}/corrections`, correction).expect(201)
    expect(await board()).toMatchObject([{ lastShownHours: 1020 }])
    const exchange = { meterId, kind: 'exchange', readAt: daysOn(service.alpha, 12), shownHours: 1030 }
    await technician.post('/meter-readings', { ...exchange, id: randomUUID(), newMeterShowsHours: 3 }).expect(201)
    expect(await board()).toMatchObject([{ lastShownHours: 3, rolloverAtHours: null }])
  })
})
