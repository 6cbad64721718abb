import { randomUUID } from 'node:crypto'
import { assert, asyncProperty, constantFrom, integer, record, shuffledSubarray, uniqueArray } from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aMount, ask, aSpot, day, daysOn, type Spot } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
const today = 700
beforeAll(async () => {
  service.setNow(new Date(service.alpha.meterRead.at.getTime() + today * day))
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
})

async function aFilledSpot(): Promise<Spot> {
  const spot = await aSpot(service)
  const fill = { greaseId: service.alpha.greaseId, greaseBearingG: 160 }
  const mount = { positionId: spot.positionId, mountedAt: daysOn(service.alpha, 0), meterShowsHours: 1000, ...fill }
  await technician.post('/mount-records', aMount(service.alpha, mount)).expect(201)
  return spot
}

/** A greasing on a day; the machine runs 12 h a day, and the meter is read at some of them. */
interface Told {
  readonly day: number
  readonly read: boolean
  readonly doseG: number
}

async function grease(spot: Spot, { day: onDay, read, doseG }: Told) {
  const reply = await technician.post('/greasings', {
    id: randomUUID(),
    positionId: spot.positionId,
    greasedAt: daysOn(service.alpha, onDay),
    doseG,
    meterShowsHours: read ? 1000 + onDay * 12 : null,
  })
  expect([reply.status, reply.body.detail]).toEqual([201, undefined])
  return reply.body
}

/** Day by day how each met its window and when it was due, and when the next one is. */
async function book(spot: Spot) {
  const { items } = (await technician.get(`/greasings?positionId=${spot.positionId}&limit=200`).expect(200)).body
  const overview = (await technician.get(`/positions/${spot.positionId}/overview`).expect(200)).body
  const done = items.map(({ greasedAt, windowResult, dueOn }: Record<string, string>) => [
    greasedAt,
    windowResult,
    dueOn,
  ])
  const { dueOn, dueRunHours, state } = overview.due
  return { done, dueOn, dueRunHours, state }
}

describe('greasings that arrive late', () => {
  it('come to the same windows and the same due date in whatever order they arrive', async () => {
    const told = uniqueArray(
      record({
        day: integer({ min: 1, max: today - 1 }),
        read: constantFrom(true, false),
        doseG: constantFrom(42, 42, 10),
      }),
      { minLength: 3, maxLength: 6, selector: ({ day: onDay }) => onDay },
    )
    const orders = told.chain((all) =>
      shuffledSubarray(all, { minLength: all.length }).map((shuffled) => ({ all, shuffled })),
    )
    await assert(
      asyncProperty(orders, async ({ all, shuffled }) => {
        const [one, other] = [await aFilledSpot(), await aFilledSpot()]
        for (const each of all.toSorted((a, b) => a.day - b.day)) await grease(one, each)
        for (const each of shuffled) await grease(other, each)
        expect(await book(other)).toEqual(await book(one))
      }),
      { numRuns: 5, endOnFailure: true },
    )
  }, 120_000)

  it('move the window of the next one: it was late until the one before came to light', async () => {
    const spot = await aFilledSpot()
    // 2000 h at 12 h a day: due on day 166.7, late beyond day 183.3
    const late = await grease(spot, { day: 240, read: true, doseG: 42 })
    expect(late).toMatchObject({ windowResult: 'late', dueOn: daysOn(service.alpha, 167).slice(0, 10) })
    expect(await grease(spot, { day: 170, read: true, doseG: 42 })).toMatchObject({ windowResult: 'met' })
    const moved = (await technician.get(`/greasings/${late.id}`).expect(200)).body
    expect(moved).toMatchObject({ windowResult: 'early', signedAt: late.signedAt })
    const filtered = await technician.get(`/greasings?positionId=${spot.positionId}&windowResult=early`).expect(200)
    expect(filtered.body.items.map(({ id }: { id: string }) => id)).toEqual([late.id])
    const kept = await ask<{ before: { window_result: string }; after: { window_result: string } }>(
      service.owner,
      service.alpha.siteId,
      "select before, after from audit_entry where table_name = 'greasing_window' and row_id = $1 and action = 'update'",
      [late.id],
    )
    expect(kept).toMatchObject([{ before: { window_result: 'late' }, after: { window_result: 'early' } }])
  })

  it('leave the windows as if they had never been, once they are withdrawn', async () => {
    const spot = await aFilledSpot()
    await grease(spot, { day: 240, read: true, doseG: 42 })
    const before = await book(spot)
    const wrong = await grease(spot, { day: 170, read: false, doseG: 42 })
    expect(await book(spot)).not.toEqual(before)
    const withdrawal = { id: randomUUID(), correctionReason: 'Another position', withdrawn: true }
    await technician
      .post(`/greasings/${wrong.id}/corrections`, { ...withdrawal, greasedAt: wrong.greasedAt, doseG: 42 })
      .expect(201)
    expect(await book(spot)).toEqual(before)
  })

  it('a reading of the meter that comes late gives those around it their hours', async () => {
    const [one, other] = [await aFilledSpot(), await aFilledSpot()]
    const read = (spot: Spot, onDay: number, hours: number) =>
      technician
        .post('/meter-readings', {
          id: randomUUID(),
          meterId: spot.meterId,
          readAt: daysOn(service.alpha, onDay),
          shownHours: hours,
        })
        .expect(201)
    for (const spot of [one, other]) {
      await grease(spot, { day: 100, read: false, doseG: 42 })
      await grease(spot, { day: 300, read: false, doseG: 42 })
    }
    await read(one, 200, 5000)
    await read(one, 400, 5100)
    await read(other, 400, 5100)
    const without = await book(other)
    await read(other, 200, 5000)
    expect(await book(other)).toEqual(await book(one))
    expect(await book(other)).not.toEqual(without)
  })
})
