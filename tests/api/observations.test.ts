import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aBearing, aMount, aSpot, day, daysOn, type Spot } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
beforeAll(async () => {
  service.setNow(new Date(service.alpha.meterRead.at.getTime() + 200 * day))
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
})

async function aFittedSpot(): Promise<Spot> {
  const spot = await aSpot(service)
  const mount = { positionId: spot.positionId, mountedAt: daysOn(service.alpha, 0), meterShowsHours: 1000 }
  await technician.post('/mount-records', aMount(service.alpha, mount)).expect(201)
  return spot
}

const observed = (spot: Spot, onDay: number, over: Record<string, unknown>) => ({
  id: randomUUID(),
  positionId: spot.positionId,
  observedAt: daysOn(service.alpha, onDay),
  ...over,
})

async function observe(spot: Spot, onDay: number, over: Record<string, unknown>) {
  const reply = await technician.post('/observations', observed(spot, onDay, over))
  expect([reply.status, reply.body.detail]).toEqual([201, undefined])
  return reply.body
}

async function flagsOf(spot: Spot): Promise<{ kind: string; facts: Record<string, unknown> }[]> {
  const reply = await technician.get(`/flags?positionId=${spot.positionId}`).expect(200)
  return reply.body.items.filter(({ kind }: { kind: string }) => ['running-hot', 'vibration-rise'].includes(kind))
}

describe('an observation', () => {
  it('comes back as it was signed, by position and by the work that it was made at', async () => {
    const spot = await aFittedSpot()
    const greasingId = randomUUID()
    const told = {
      temperatureC: 51.5,
      vibrationMmS: 2.1,
      zone: 'B',
      reliefClosed: true,
      oldGreaseSeen: false,
      note: 'Quiet',
    }
    const made = await observe(spot, 10, { ...told, greasingId })
    expect(made).toMatchObject({
      ...told,
      greasingId,
      tag: spot.tag,
      signedBy: 'technician of alpha',
      withdrawnAt: null,
    })
    for (const query of [`positionId=${spot.positionId}`, `greasingId=${greasingId}`]) {
      expect((await technician.get(`/observations?${query}`).expect(200)).body.items).toEqual([made])
    }
    expect((await technician.get(`/observations/${made.id}`).expect(200)).body).toEqual(made)
  })

  it('is signed once, however often it is sent', async () => {
    const spot = await aFittedSpot()
    const body = observed(spot, 10, { temperatureC: 50 })
    const first = await technician.post('/observations', body).expect(201)
    expect((await technician.post('/observations', body).expect(201)).body).toEqual(first.body)
    expect((await technician.post('/observations', { ...body, temperatureC: 51 })).status).toBe(409)
  })

  it.each([
    ['nothing at all', {}, 400],
    ['a temperature that cannot be', { temperatureC: 900 }, 400],
    ['a day to come', { temperatureC: 50, observedAt: new Date(Date.UTC(2999, 0, 1)).toISOString() }, 422],
  ])('of %s is refused', async (_name, over, status) => {
    const spot = await aFittedSpot()
    expect((await technician.post('/observations', observed(spot, 10, over))).status).toBe(status)
  })
})

describe('a rise against the position’s own history', () => {
  it('raises running-hot with both temperatures, and a cooler reading clears it', async () => {
    const spot = await aFittedSpot()
    for (const [onDay, temperatureC] of [
      [10, 50],
      [20, 52],
      [30, 51],
    ] as const)
      await observe(spot, onDay, { temperatureC })
    await observe(spot, 40, { temperatureC: 66 })
    expect(await flagsOf(spot)).toEqual([])
    await observe(spot, 50, { temperatureC: 68 })
    // median of 50, 52, 51, 66 is 51.5
    expect(await flagsOf(spot)).toMatchObject([{ kind: 'running-hot', facts: { observedC: 68, usualC: 51.5 } }])
    await observe(spot, 60, { temperatureC: 53 })
    expect(await flagsOf(spot)).toEqual([])
  })

  it('counts observations in the order that they were made, not sent', async () => {
    const spot = await aFittedSpot()
    await observe(spot, 40, { temperatureC: 80 })
    for (const onDay of [10, 20, 30]) await observe(spot, onDay, { temperatureC: 50 })
    expect(await flagsOf(spot)).toMatchObject([{ kind: 'running-hot', facts: { observedC: 80, usualC: 50 } }])
  })

  it('withdrawing the reading clears its flag, once and with a reason', async () => {
    const spot = await aFittedSpot()
    for (const onDay of [10, 20, 30]) await observe(spot, onDay, { temperatureC: 50 })
    const wrong = await observe(spot, 40, { temperatureC: 80 })
    expect(await flagsOf(spot)).toHaveLength(1)
    const path = `/observations/${wrong.id}/withdrawal`
    const reply = await technician.post(path, { reason: 'Read at the motor' }).expect(200)
    expect(reply.body).toMatchObject({ withdrawnReason: 'Read at the motor', temperatureC: 80 })
    expect(await flagsOf(spot)).toEqual([])
    expect((await technician.post(path, { reason: 'Once more' })).body.code).toBe('already-withdrawn')
  })

  it('raises vibration-rise by the velocity, and by a zone that got worse', async () => {
    const [one, two] = [await aFittedSpot(), await aFittedSpot()]
    for (const onDay of [10, 20, 30]) {
      await observe(one, onDay, { vibrationMmS: 1.2, zone: 'A' })
      await observe(two, onDay, { zone: 'B' })
    }
    await observe(one, 40, { vibrationMmS: 2, zone: 'B' })
    await observe(two, 40, { zone: 'C' })
    expect(await flagsOf(one)).toMatchObject([
      { kind: 'vibration-rise', facts: { observedMmS: 2, usualMmS: 1.2, zone: 'B' } },
    ])
    expect(await flagsOf(two)).toMatchObject([{ kind: 'vibration-rise', facts: { zone: 'C' } }])
  })

  it('begins anew with another bearing', async () => {
    const spot = await aFittedSpot()
    for (const onDay of [10, 20, 30]) await observe(spot, onDay, { temperatureC: 50 })
    await observe(spot, 40, { temperatureC: 80 })
    const removal = { endKind: 'not-failed', observer: 'Ada Brunn' }
    const mount = { positionId: spot.positionId, mountedAt: daysOn(service.alpha, 50), meterShowsHours: 1400 }
    await technician
      .post('/mount-records', aMount(service.alpha, { ...mount, bearing: aBearing(service.alpha), removal }))
      .expect(201)
    expect(await flagsOf(spot)).toEqual([])
  })
})
