import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { aGrease } from '../../seeds/builders/catalogue-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aMount, ask, aSpot, day, daysOn, insert, type Spot } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let engineer: SiteAgent
let siteId: string
/** The service's clock stands 100 days after the meter of each spot was read at 1000 h. */
beforeAll(async () => {
  service.setNow(new Date(service.alpha.meterRead.at.getTime() + 100 * day))
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
  siteId = service.alpha.siteId
})

/** A spot whose bearing was mounted and filled on day 0 at 1000 h: the plan asks for 42 g every 2000 h or 12 months. */
async function aFilledSpot(): Promise<Spot> {
  const spot = await aSpot(service)
  const fill = { greaseId: service.alpha.greaseId, greaseBearingG: 160, meterShowsHours: 1000 }
  const mount = aMount(service.alpha, { positionId: spot.positionId, mountedAt: daysOn(service.alpha, 0), ...fill })
  await technician.post('/mount-records', mount).expect(201)
  return spot
}

function aGreasing(spot: Spot, onDay: number, over: Record<string, unknown> = {}) {
  return { id: randomUUID(), positionId: spot.positionId, greasedAt: daysOn(service.alpha, onDay), doseG: 42, ...over }
}

async function grease(spot: Spot, onDay: number, over: Record<string, unknown> = {}) {
  return (await technician.post('/greasings', aGreasing(spot, onDay, over)).expect(201)).body
}

function correct(path: string, over: Record<string, unknown>) {
  return technician.post(`${path}/corrections`, { id: randomUUID(), correctionReason: 'Misread', ...over })
}

async function readings(spot: Spot): Promise<{ id: string; shownHours: number }[]> {
  return (await technician.get(`/meter-readings?meterId=${spot.meterId}`).expect(200)).body.items
}

async function dueRunHours(spot: Spot): Promise<number | null> {
  return (await technician.get(`/positions/${spot.positionId}/overview`).expect(200)).body.due.dueRunHours
}

describe('a reading that is corrected', () => {
  it('moves what is due after the greasing that went by it', async () => {
    const spot = await aFilledSpot()
    // 1480 h was read as 2480 h
    await grease(spot, 62, { meterShowsHours: 2480 })
    expect(await dueRunHours(spot)).toBe(4480)
    const [wrong] = await readings(spot)
    await correct(`/meter-readings/${wrong?.id}`, { shownHours: 1480 }).expect(201)
    expect(await dueRunHours(spot)).toBe(3480)
  })

  it('moves what is due after a greasing whose hours were estimated between readings', async () => {
    const spot = await aFilledSpot()
    const reading = { id: randomUUID(), meterId: spot.meterId, readAt: daysOn(service.alpha, 80), shownHours: 2600 }
    await technician.post('/meter-readings', reading).expect(201)
    await grease(spot, 40)
    // half way from 1000 h to 2600 h, then half way to 1400 h; the interval is 2000 h
    expect(await dueRunHours(spot)).toBe(3800)
    await correct(`/meter-readings/${reading.id}`, { shownHours: 1400 }).expect(201)
    expect(await dueRunHours(spot)).toBe(3200)
  })

  it('lets the next greasing be judged by it', async () => {
    const spot = await aFilledSpot()
    await grease(spot, 10, { meterShowsHours: 1250 })
    const [wrong] = await readings(spot)
    await correct(`/meter-readings/${wrong?.id}`, { shownHours: 1050 }).expect(201)
    const next = await grease(spot, 11, { meterShowsHours: 1060 })
    expect(next).toMatchObject({ runHours: 1060, windowResult: 'early' })
    expect(await dueRunHours(spot)).toBe(3060)
  })
})

describe('a corrected greasing', () => {
  it('corrects the reading that it went by, downwards too', async () => {
    const spot = await aFilledSpot()
    const { id, greasedAt } = await grease(spot, 62, { meterShowsHours: 2480 })
    const reply = await correct(`/greasings/${id}`, { greasedAt, doseG: 42, meterShowsHours: 1480 })
    expect([reply.status, reply.body.runHours]).toEqual([201, 1480])
    expect((await readings(spot)).map((reading) => reading.shownHours)).toEqual([1480, 1000])
    expect(await dueRunHours(spot)).toBe(3480)
  })

  it('keeps the grease that went in before there was a plan, also when it is withdrawn', async () => {
    const spot = await aSpot(service)
    await ask(service.owner, siteId, 'delete from grease_plan where position_id = $1', [spot.positionId])
    const { positionId } = spot
    const mount = aMount(service.alpha, { positionId, mountedAt: daysOn(service.alpha, 0), meterShowsHours: 1000 })
    await technician.post('/mount-records', mount).expect(201)
    const { greaseId } = service.alpha
    const { id, greasedAt } = await grease(spot, 50, { greaseId })
    const other = aGrease({ siteId, name: 'Fen LX 2' })
    await insert(service.owner, siteId, 'grease', [other])
    await engineer.post('/grease-plans', plan(spot, other.id)).expect(201)
    const dose = await correct(`/greasings/${id}`, { greasedAt, doseG: 40, greaseId })
    expect([dose.status, dose.body.greaseId]).toEqual([201, greaseId])
    const gone = await correct(`/greasings/${dose.body.id}`, { greasedAt, doseG: 40, withdrawn: true })
    expect([gone.status, gone.body.greaseId]).toEqual([201, greaseId])
  })
})

function plan(spot: Spot, greaseId: string) {
  const interval = { intervalHours: 2000, entry: 'side', source: 'by-hand' }
  return { id: randomUUID(), positionId: spot.positionId, greaseId, doseG: 42, ...interval }
}
