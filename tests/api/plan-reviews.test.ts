import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openDatabase, type Database } from '../../apps/api/src/db/database.ts'
import { turnOfDay } from '../../apps/api/src/jobs/turn-of-day.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { ask, aSpot, day, daysOn, type Spot } from './shaft-work.ts'

const service = useTestApp()
let engineer: SiteAgent
let db: Database
const at = (days: number): Date => new Date(service.alpha.meterRead.at.getTime() + days * day)
beforeAll(async () => {
  db = openDatabase({
    appUrl: service.database.appUrl,
    poolSize: 2,
    onError: (error) => {
      throw error
    },
  })
  service.setNow(at(10))
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
})
afterAll(() => db.close())

// 22220 at 90 rev/min: 14e6 / (90 · √100) − 400 = 15155 h, capped at 8760 h; with light abrasive dirt 0.4 · 15155 = 6062 h
const duty = {
  speedRpm: 90,
  boreMm: 100,
  levels: {
    temperature: 'below-65',
    dirt: 'light-abrasive',
    moisture: 'below-80',
    vibration: 'below-5',
    shaft: 'horizontal',
    bearing: 'spherical-roller',
  },
  loadOverRating: 0.05,
}

async function aComputedSpot(): Promise<Spot & { computedId: string; shaftId: string }> {
  const spot = await aSpot(service)
  const id = randomUUID()
  const told = {
    greaseId: service.alpha.greaseId,
    entry: 'side',
    doseG: 42,
    intervalHours: 6062,
    source: 'computed',
    duty,
  }
  await engineer.post('/grease-plans', { id, positionId: spot.positionId, ...told }).expect(201)
  const position = (await engineer.get(`/positions/${spot.positionId}`).expect(200)).body
  return { ...spot, computedId: id, shaftId: position.shaftId }
}

async function setShaft(shaftId: string, change: Record<string, unknown>): Promise<void> {
  const { body } = await engineer.get(`/shafts/${shaftId}`).expect(200)
  await engineer.patch(`/shafts/${shaftId}`, change, body.version).expect(200)
}

async function reviewFlag(spot: Spot) {
  const reply = await engineer.get(`/flags?positionId=${spot.positionId}&kind=plan-review`).expect(200)
  return reply.body.items[0]
}

describe('a computed plan whose duty changed in the register', () => {
  it('is flagged with both numbers, and stays as it is', async () => {
    const spot = await aComputedSpot()
    expect(await reviewFlag(spot)).toBeUndefined()
    await setShaft(spot.shaftId, { attitude: 'vertical' })
    // 0.4 · 0.3 · 15155 = 1818 h
    expect(await reviewFlag(spot)).toMatchObject({
      facts: { dutyChanged: true, intervalHours: 6062, proposedIntervalHours: 1818 },
    })
    const plan = await engineer.get(`/grease-plans/${spot.computedId}`).expect(200)
    expect(plan.body).toMatchObject({ intervalHours: 6062, endedAt: null })
  })

  it('is left in peace for 10 % or less', async () => {
    const spot = await aComputedSpot()
    // 14e6 / 960 − 400 = 14183; 0.4 of it is 5673 h, 6 % less
    await setShaft(spot.shaftId, { speedRpm: 96 })
    expect(await reviewFlag(spot)).toBeUndefined()
  })

  it('clears with a new plan', async () => {
    const spot = await aComputedSpot()
    await setShaft(spot.shaftId, { attitude: 'vertical' })
    const told = { greaseId: service.alpha.greaseId, entry: 'side', doseG: 42, intervalHours: 1800, source: 'computed' }
    const now = { ...duty, levels: { ...duty.levels, shaft: 'vertical' } }
    await engineer
      .post('/grease-plans', { id: randomUUID(), positionId: spot.positionId, ...told, duty: now })
      .expect(201)
    expect(await reviewFlag(spot)).toBeUndefined()
  })

  it('clears when it is kept with a reason, and comes back only when it comes to something else again', async () => {
    const spot = await aComputedSpot()
    await setShaft(spot.shaftId, { attitude: 'vertical' })
    const body = { id: randomUUID(), reason: 'The grease stays in: the housing is sealed below' }
    const kept = await engineer.post(`/grease-plans/${spot.computedId}/reviews`, body).expect(201)
    expect(kept.body).toMatchObject({ reason: body.reason, computedIntervalHours: 1818, planId: spot.computedId })
    expect(await reviewFlag(spot)).toBeUndefined()
    const again = await engineer.post(`/grease-plans/${spot.computedId}/reviews`, body).expect(201)
    expect(again.body).toEqual(kept.body)
    await setShaft(spot.shaftId, { speedRpm: 91 })
    expect(await reviewFlag(spot)).toMatchObject({ facts: { proposedIntervalHours: 1798 } })
    const list = await engineer.get(`/plan-reviews?planId=${spot.computedId}`).expect(200)
    expect(list.body.items).toEqual([kept.body])
  })

  it('is not kept without a reason, nor by a technician', async () => {
    const spot = await aComputedSpot()
    const path = `/grease-plans/${spot.computedId}/reviews`
    expect((await engineer.post(path, { id: randomUUID(), reason: '' })).status).toBe(400)
    const technician = await service.signIn(service.alpha.people.technician, 'alpha')
    expect((await technician.post(path, { id: randomUUID(), reason: 'Looks fine' })).status).toBe(403)
  })
})

describe('a plan set by hand', () => {
  it('raises its flag on its day of review, not before, and keeping it sets the next day', async () => {
    const spot = await aSpot(service)
    const id = randomUUID()
    const reviewOn = daysOn(service.alpha, 20).slice(0, 10)
    const told = { greaseId: service.alpha.greaseId, entry: 'side', doseG: 42, intervalHours: 500, source: 'by-hand' }
    await engineer
      .post('/grease-plans', { id, positionId: spot.positionId, ...told, reason: 'Runs hot', reviewOn })
      .expect(201)
    service.setNow(at(19))
    await turnOfDay(db, at(19))
    expect(await reviewFlag(spot)).toBeUndefined()
    service.setNow(at(21))
    await turnOfDay(db, at(21))
    expect(await reviewFlag(spot)).toMatchObject({ facts: { reviewOn }, since: `${reviewOn}T00:00:00.000Z` })
    expect(await turnOfDay(db, at(21))).toBe(0)
    const next = daysOn(service.alpha, 40).slice(0, 10)
    await engineer
      .post(`/grease-plans/${id}/reviews`, { id: randomUUID(), reason: 'Still hot', reviewOn: next })
      .expect(201)
    expect(await reviewFlag(spot)).toBeUndefined()
    await turnOfDay(db, at(41))
    const flags = await ask<{ facts: { reviewOn: string } }>(
      service.owner,
      service.alpha.siteId,
      "select facts from flag where subject_id = $1 and kind = 'plan-review' and cleared_at is null",
      [id],
    )
    expect(flags).toMatchObject([{ facts: { reviewOn: next } }])
  })
})
