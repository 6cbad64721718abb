import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import {
  aBearing,
  aMount,
  aSpot,
  daysOn,
  expectNothingWritten,
  expectRefused,
  insideReadings,
  plannedRemoval,
  type Spot,
} from './shaft-work.ts'
import { aSpotWithKit, draftOf } from './sheet-work.ts'

const service = useTestApp()
let technician: SiteAgent
let engineer: SiteAgent
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
})

/** What both sheets judged by at a position of the small site: the guide for 22220 K/C3. */
const seen = { bandMinUm: 45, bandMaxUm: 60, residualMinUm: 50, kitVersion: null }

/** Sends a signed mount that is refused, and nothing of it is written. */
async function expectRefusal(over: Record<string, unknown>, status: number, code: string, path: string) {
  let detail = ''
  await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
    const body = aMount(service.alpha, over)
    detail = (await expectRefused(technician.post('/mount-records', body), status, code, path)).detail
  })
  return detail
}

async function stayAt({ positionId }: Spot): Promise<string> {
  const reply = await technician.get(`/fitments?positionId=${positionId}&open=true`).expect(200)
  return reply.body.items[0].id
}

describe('a sheet whose position has changed since', () => {
  it('is refused with the bearing that went in meanwhile, when and by whom', async () => {
    const spot = await aSpot(service)
    const { positionId, tag } = spot
    const first = aMount(service.alpha, { positionId, bearing: aBearing(service.alpha, { serial: 'TB-8001' }) })
    await engineer.post('/mount-records', first).expect(201)
    const second = { positionId, leavingFitmentId: null, mountedAt: daysOn(service.alpha, 81), meterShowsHours: 2510 }
    const detail = await expectRefusal(second, 409, 'position-changed', 'leavingFitmentId')
    expect(detail).toBe(
      `${tag} has changed since this sheet was begun: 22220 K/C3 no. TB-8001 was fitted on ${daysOn(service.alpha, 80).slice(0, 10)}, signed by engineer of alpha. Look at what is fitted there now, then begin the sheet with that.`,
    )
  })

  it('is refused with both the bearing that left and the one that came', async () => {
    const spot = await aSpot(service)
    const { positionId } = spot
    await technician.post('/mount-records', aMount(service.alpha, { positionId })).expect(201)
    const leavingFitmentId = await stayAt(spot)
    const again = { positionId, mountedAt: daysOn(service.alpha, 85), meterShowsHours: 2600, removal: plannedRemoval }
    await engineer.post('/mount-records', aMount(service.alpha, { ...again, leavingFitmentId })).expect(201)
    const late = { ...again, mountedAt: daysOn(service.alpha, 86), meterShowsHours: 2620, leavingFitmentId }
    const detail = await expectRefusal(late, 409, 'position-changed', 'leavingFitmentId')
    const on = daysOn(service.alpha, 85).slice(0, 10)
    expect(detail).toContain(`was taken out on ${on}, signed by engineer of alpha`)
    expect(detail).toContain(`was fitted on ${on}, signed by engineer of alpha`)
  })

  it('is refused where the bearing was only taken out', async () => {
    const spot = await aSpot(service)
    const { positionId } = spot
    await technician.post('/mount-records', aMount(service.alpha, { positionId })).expect(201)
    const leavingFitmentId = await stayAt(spot)
    const removal = { id: randomUUID(), positionId, removedAt: daysOn(service.alpha, 85), meterShowsHours: 2600 }
    await technician.post('/removals', { ...removal, ...plannedRemoval }).expect(201)
    const late = { positionId, mountedAt: daysOn(service.alpha, 86), meterShowsHours: 2620, leavingFitmentId }
    const detail = await expectRefusal(late, 409, 'position-changed', 'leavingFitmentId')
    expect(detail).toContain('was taken out')
    expect(detail).not.toContain('was fitted')
  })

  it('is kept as a draft all the same, and signed once it is begun with what is there', async () => {
    const spot = await aSpot(service)
    const { positionId } = spot
    await technician.post('/mount-records', aMount(service.alpha, { positionId })).expect(201)
    const body = aMount(service.alpha, {
      positionId,
      mountedAt: daysOn(service.alpha, 85),
      meterShowsHours: 2600,
      removal: plannedRemoval,
      leavingFitmentId: null,
      seen: { ...seen, bandMaxUm: 55 },
      sign: false,
    })
    const { version } = (await technician.post('/mount-records', body).expect(201)).body
    const sign = (said: object) => technician.postIfMatch(`/mount-records/${body.id}/signature`, said, version)
    await expectRefused(sign({ leavingFitmentId: null }), 409, 'position-changed', 'leavingFitmentId')
    await expectRefused(sign({ leavingFitmentId: randomUUID() }), 409, 'position-changed', 'leavingFitmentId')
    await sign({ leavingFitmentId: await stayAt(spot), seen }).expect(200)
  })
})

describe('two devices on one position', () => {
  it('sign one of two sheets that were begun with the same bearing; the other person is told, and signs after a look', async () => {
    const spot = await aSpot(service)
    const { positionId } = spot
    await technician.post('/mount-records', aMount(service.alpha, { positionId })).expect(201)
    const leavingFitmentId = await stayAt(spot)
    const sheet = (days: number) =>
      aMount(service.alpha, {
        positionId,
        mountedAt: daysOn(service.alpha, days),
        meterShowsHours: 2500 + days,
        removal: plannedRemoval,
        leavingFitmentId,
      })
    const [one, other] = [sheet(84), sheet(85)]
    const replies = await Promise.all([technician.post('/mount-records', one), engineer.post('/mount-records', other)])
    expect(replies.filter(({ status }) => status === 201)).toHaveLength(1)
    expect(replies.find(({ status }) => status === 409)?.body.code).toBe('position-changed')
    const stays = await technician.get(`/fitments?positionId=${positionId}`).expect(200)
    expect(stays.body.items).toHaveLength(2)
  })
})

describe('a sheet that was judged by another band', () => {
  it('is refused with both bands', async () => {
    const { positionId, tag } = await aSpot(service)
    const detail = await expectRefusal(
      { positionId, seen: { ...seen, bandMinUm: 40, bandMaxUm: 55 } },
      409,
      'band-changed',
      'seen.bandMinUm',
    )
    expect(detail).toBe(
      `The band at ${tag} is 45 to 60 µm today, this sheet was judged by 40 to 55 µm: look at the drive-up again, then sign by the band of today.`,
    )
  })

  it('is refused where it knew none', async () => {
    const { positionId } = await aSpot(service)
    const unknown = { ...seen, bandMinUm: null, bandMaxUm: null }
    const detail = await expectRefusal({ positionId, seen: unknown }, 409, 'band-changed', 'seen.bandMinUm')
    expect(detail).toContain('judged by not known')
  })

  it('is refused with both least clearances', async () => {
    const { positionId } = await aSpot(service)
    const detail = await expectRefusal(
      { positionId, seen: { ...seen, residualMinUm: 45.5 } },
      409,
      'band-changed',
      'seen.residualMinUm',
    )
    expect(detail).toContain('is 50 µm today, this sheet was judged by 45.5 µm')
  })

  it('is signed where the limits are the same to the nanometre', async () => {
    const own = { ownReductionMinNm: 40_100, ownReductionMaxNm: 60_300, ownBandSource: 'Note 7' }
    const { positionId } = await aSpot(service, { position: own })
    const same = { ...seen, bandMinUm: 40.1, bandMaxUm: 60.3 }
    const signed = await technician.post('/mount-records', aMount(service.alpha, { positionId, seen: same }))
    expect([signed.status, signed.body.judgement?.band]).toMatchObject([201, { minUm: 40.1, maxUm: 60.3 }])
  })
})

describe('a sheet that was filled by another version of the kit', () => {
  it('is refused with both versions', async () => {
    const { positionId, tag, kitId } = await aSpotWithKit(service)
    await engineer.patch(`/kits/${kitId}`, { note: 'With the long nut' }, 1).expect(200)
    const detail = await expectRefusal(
      { positionId, seen: { ...seen, kitVersion: 1 } },
      409,
      'kit-changed',
      'seen.kitVersion',
    )
    expect(detail).toMatch(
      new RegExp(`^The kit at ${tag} is version 2 of Kit .* today, this sheet was filled by version 1:`),
    )
    const now = aMount(service.alpha, { positionId, seen: { ...seen, kitVersion: 2 } })
    await technician.post('/mount-records', now).expect(201)
  })

  it('is refused where it was another kit of the same version', async () => {
    const { positionId, kitId } = await aSpotWithKit(service)
    const other = { ...seen, kitVersion: 1, kitId: randomUUID() }
    const detail = await expectRefusal({ positionId, seen: other }, 409, 'kit-changed', 'seen.kitVersion')
    expect(detail).toContain('this sheet was filled by version 1 of another kit')
    const same = aMount(service.alpha, { positionId, seen: { ...other, kitId } })
    await technician.post('/mount-records', same).expect(201)
  })

  it('is refused where it knew of a kit and there is none', async () => {
    const { positionId } = await aSpot(service)
    const detail = await expectRefusal(
      { positionId, seen: { ...seen, kitVersion: 3 } },
      409,
      'kit-changed',
      'seen.kitVersion',
    )
    expect(detail).toContain('is none today, this sheet was filled by version 3')
  })
})

describe('a draft that is replaced and signed in one act', () => {
  it('is signed once, however often the same change is sent', async () => {
    const { positionId } = await aSpot(service)
    const body = aMount(service.alpha, { positionId, readings: [], sign: false })
    const { version } = (await technician.post('/mount-records', body).expect(201)).body
    const change = { ...draftOf(body), readings: insideReadings, sign: true, changeId: randomUUID() }
    const send = () => technician.patch(`/mount-records/${body.id}`, change, version)
    const [one, other] = await Promise.all([send(), send()])
    const third = await send().expect(200)
    expect([one.status, other.status]).toEqual([200, 200])
    expect([one.body.signedAt, other.body.signedAt]).toEqual([third.body.signedAt, third.body.signedAt])
    expect(third.body).toMatchObject({ judgement: { verdict: 'inside' }, signedBy: 'technician of alpha' })
    const stays = await technician.get(`/fitments?positionId=${positionId}`).expect(200)
    expect(stays.body.items).toHaveLength(1)
  })

  it('stays as it was where it cannot be signed so, and the same change may be sent again', async () => {
    const { positionId } = await aSpot(service)
    const body = aMount(service.alpha, { positionId, sign: false, fitter: 'Ada Brunn' })
    const { version } = (await technician.post('/mount-records', body).expect(201)).body
    const change = { ...draftOf(body), fitter: 'Bo Lund', sign: true, changeId: randomUUID() }
    const wrong = { ...change, seen: { ...seen, bandMaxUm: 55 } }
    await expectRefused(
      technician.patch(`/mount-records/${body.id}`, wrong, version),
      409,
      'band-changed',
      'seen.bandMinUm',
    )
    expect((await technician.get(`/mount-records/${body.id}`)).body).toMatchObject({ fitter: 'Ada Brunn', version })
    const signed = await technician.patch(`/mount-records/${body.id}`, change, version).expect(200)
    expect(signed.body).toMatchObject({ fitter: 'Bo Lund', signedBy: 'technician of alpha' })
  })

  it('is refused under a change id that stood for other contents', async () => {
    const { positionId } = await aSpot(service)
    const body = aMount(service.alpha, { positionId, sign: false })
    const { version } = (await technician.post('/mount-records', body).expect(201)).body
    const change = { ...draftOf(body), changeId: randomUUID() }
    const kept = await technician.patch(`/mount-records/${body.id}`, change, version).expect(200)
    const other = { ...change, note: 'Something else' }
    await expectRefused(
      technician.patch(`/mount-records/${body.id}`, other, kept.body.version),
      409,
      'id-already-used',
      'id',
    )
  })
})
