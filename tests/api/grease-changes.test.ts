import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { aGrease } from '../../seeds/builders/catalogue-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aMount, aSpot, day, daysOn, insert, type Spot } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let engineer: SiteAgent
/** The plan's grease is of lithium complex: it goes together with the first, borderline with the second, not with the third. */
const other = { compatible: '', borderline: '', incompatible: '' }
let today = 100
beforeAll(async () => {
  const { siteId, people } = service.alpha
  setDay(100)
  technician = await service.signIn(people.technician, 'alpha')
  engineer = await service.signIn(people.engineer, 'alpha')
  const made = (['lithium12oh', 'calciumSulfonate', 'polyureaConventional'] as const).map((thickener) =>
    aGrease({ siteId, name: `Grease of ${thickener}`, thickener }),
  )
  await insert(service.owner, siteId, 'grease', made)
  ;[other.compatible, other.borderline, other.incompatible] = made.map(({ id }) => id) as [string, string, string]
})

function setDay(onDay: number): void {
  today = onDay
  service.setNow(new Date(service.alpha.meterRead.at.getTime() + onDay * day))
}

async function aFilledSpot(): Promise<Spot> {
  const spot = await aSpot(service)
  const fill = { greaseId: service.alpha.greaseId, greaseBearingG: 160 }
  const mount = { positionId: spot.positionId, mountedAt: daysOn(service.alpha, 0), meterShowsHours: 1000, ...fill }
  await technician.post('/mount-records', aMount(service.alpha, mount)).expect(201)
  return spot
}

const start = (spot: Spot, toGreaseId: string, way: string) =>
  engineer.post('/grease-changes', {
    id: randomUUID(),
    positionId: spot.positionId,
    toGreaseId,
    way,
    reason: 'Runs hotter now',
  })
const grease = (spot: Spot, greaseId: string | null, onDay = today) =>
  technician.post('/greasings', {
    id: randomUUID(),
    positionId: spot.positionId,
    greasedAt: daysOn(service.alpha, onDay),
    doseG: 42,
    greaseId,
  })

async function planOf(spot: Spot) {
  return (await engineer.get(`/positions/${spot.positionId}/overview`).expect(200)).body.plan
}

async function openFlags(spot: Spot): Promise<string[]> {
  const reply = await technician.get(`/flags?positionId=${spot.positionId}`).expect(200)
  return reply.body.items.map((flag: { kind: string }) => flag.kind)
}

const read = async (id: string) => (await engineer.get(`/grease-changes/${id}`).expect(200)).body

describe('a change-over by flushing', () => {
  it('gives three doses at a third of the interval, flagged until the last, then the usual interval', async () => {
    const spot = await aFilledSpot()
    const { body: change } = await start(spot, other.compatible, 'flush').expect(201)
    expect(change).toMatchObject({ state: 'flush', dosesLeft: 3, endedAt: null })
    expect(change.nextFlushOn).toMatch(/^\d{4}-/)
    // 2000 h and 12 months
    expect(await planOf(spot)).toMatchObject({
      greaseId: other.compatible,
      intervalHours: 666,
      calendarMonths: 4,
      doseG: 42,
    })
    const old = await grease(spot, service.alpha.greaseId)
    expect([old.status, old.body.code]).toEqual([422, 'grease-not-planned'])
    for (const dosesLeft of [2, 1]) {
      await grease(spot, null).expect(201)
      expect(await read(change.id)).toMatchObject({ state: 'flush', dosesLeft })
      expect(await openFlags(spot)).toContain('grease-change-open')
      setDay(today + 10)
    }
    await grease(spot, other.compatible).expect(201)
    expect(await read(change.id)).toMatchObject({ state: 'finished', dosesLeft: null, nextFlushOn: null })
    expect(await openFlags(spot)).not.toContain('grease-change-open')
    expect(await planOf(spot)).toMatchObject({ greaseId: other.compatible, intervalHours: 2000, calendarMonths: 12 })
    setDay(100)
  })

  it('a dose that is withdrawn is still to be given', async () => {
    const spot = await aFilledSpot()
    const { body: change } = await start(spot, other.compatible, 'flush').expect(201)
    const { body: dose } = await grease(spot, null).expect(201)
    const withdrawal = { id: randomUUID(), correctionReason: 'Another position', withdrawn: true }
    await technician
      .post(`/greasings/${dose.id}/corrections`, { ...withdrawal, greasedAt: dose.greasedAt, doseG: 42 })
      .expect(201)
    expect(await read(change.id)).toMatchObject({ dosesLeft: 3 })
  })
})

describe('a change-over by stripping', () => {
  it('takes no dose by gun before it is logged as stripped', async () => {
    const spot = await aFilledSpot()
    const { body: change } = await start(spot, other.incompatible, 'strip').expect(201)
    expect(await planOf(spot)).toMatchObject({ greaseId: other.incompatible, intervalHours: 2000 })
    const early = await grease(spot, null)
    expect([early.status, early.body.code]).toEqual([422, 'grease-not-planned'])
    const done = await technician.post(`/grease-changes/${change.id}/finish`, { note: 'Seals changed' }).expect(200)
    expect(done.body).toMatchObject({ state: 'finished', note: 'Seals changed' })
    await grease(spot, null).expect(201)
    expect(await openFlags(spot)).not.toContain('grease-change-open')
  })

  it('a new bearing filled with the new grease finishes it', async () => {
    const spot = await aFilledSpot()
    const { body: change } = await start(spot, other.incompatible, 'strip').expect(201)
    const fill = {
      greaseId: other.incompatible,
      greaseBearingG: 160,
      removal: { endKind: 'not-failed', observer: 'Ada Brunn' },
    }
    const mount = {
      positionId: spot.positionId,
      mountedAt: daysOn(service.alpha, today),
      meterShowsHours: 2000,
      ...fill,
    }
    await technician.post('/mount-records', aMount(service.alpha, mount)).expect(201)
    expect(await read(change.id)).toMatchObject({ state: 'finished' })
  })
})

describe('a change-over that asks the lab first', () => {
  it('keeps the old grease until the result, then flushes what mixes', async () => {
    const spot = await aFilledSpot()
    const { body: change } = await start(spot, other.compatible, 'lab-first').expect(201)
    expect(change).toMatchObject({ state: 'lab', dosesLeft: null })
    await grease(spot, service.alpha.greaseId).expect(201)
    const told = await engineer
      .post(`/grease-changes/${change.id}/lab-result`, { mixes: true, note: 'Sheet 12' })
      .expect(200)
    expect(told.body).toMatchObject({ state: 'flush', dosesLeft: 3 })
    expect((await grease(spot, service.alpha.greaseId)).body.code).toBe('grease-not-planned')
    expect((await engineer.post(`/grease-changes/${change.id}/lab-result`, { mixes: true })).status).toBe(422)
  })

  it('strips what does not mix', async () => {
    const spot = await aFilledSpot()
    const { body: change } = await start(spot, other.compatible, 'lab-first').expect(201)
    const told = await engineer.post(`/grease-changes/${change.id}/lab-result`, { mixes: false }).expect(200)
    expect(told.body).toMatchObject({ state: 'strip', dosesLeft: null })
  })
})

describe('a change-over', () => {
  it.each([
    ['flush', 'incompatible'],
    ['lab-first', 'incompatible'],
    ['flush', 'borderline'],
  ] as const)('by %s is refused where the greases are %s', async (way, which) => {
    const reply = await start(await aFilledSpot(), other[which], way)
    expect([reply.status, reply.body.fields[0].path]).toEqual([422, 'way'])
  })

  it('is one at a time, of a plan that is there, to another grease, by an engineer', async () => {
    const spot = await aFilledSpot()
    expect((await start(spot, service.alpha.greaseId, 'strip')).body.fields[0].path).toBe('toGreaseId')
    await start(spot, other.compatible, 'flush').expect(201)
    expect((await start(spot, other.incompatible, 'strip')).status).toBe(422)
    const told = {
      id: randomUUID(),
      positionId: spot.positionId,
      toGreaseId: other.compatible,
      way: 'strip',
      reason: 'New',
    }
    await technician.post('/grease-changes', told).expect(403)
    const plan = { greaseId: service.alpha.greaseId, entry: 'side', doseG: 20, intervalHours: 100, source: 'by-hand' }
    expect(
      (await engineer.post('/grease-plans', { id: randomUUID(), positionId: spot.positionId, ...plan })).status,
    ).toBe(422)
  })

  it('can be abandoned before any new grease went in: the old plan is in force again', async () => {
    const spot = await aFilledSpot()
    const { body: change } = await start(spot, other.compatible, 'flush').expect(201)
    await engineer.post(`/grease-changes/${change.id}/abandon`, { reason: 'Delivered too late' }).expect(200)
    expect(await planOf(spot)).toMatchObject({ greaseId: service.alpha.greaseId, intervalHours: 2000 })
    expect(await openFlags(spot)).not.toContain('grease-change-open')
    const { body: again } = await start(spot, other.compatible, 'flush').expect(201)
    await grease(spot, null).expect(201)
    expect((await engineer.post(`/grease-changes/${again.id}/abandon`, { reason: 'Too late' })).status).toBe(422)
    const open = await engineer.get(`/grease-changes?positionId=${spot.positionId}&open=true`).expect(200)
    expect(open.body.items.map(({ id }: { id: string }) => id)).toEqual([again.id])
  })
})
