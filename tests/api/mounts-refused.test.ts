import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { aBearingType } from '../../seeds/builders/catalogue-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import {
  aBearing,
  aMount,
  aSpot,
  daysOn,
  expectNothingWritten,
  expectRefused,
  insert,
  overReadings,
  plannedRemoval,
  typedReadings,
  type Spot,
} from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let engineer: SiteAgent
let spot: Spot
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
  spot = await aSpot(service)
})

/** Sends a mount that differs from a good one; it is refused and no table of either site changes. */
async function expectMountRefused(over: Record<string, unknown>, status: number, code: string, path: string) {
  const body = aMount(service.alpha, { positionId: spot.positionId, ...over })
  let problem: Awaited<ReturnType<typeof expectRefused>> | undefined
  await expectNothingWritten(service.owner, service.beta.siteId, () =>
    expectNothingWritten(service.owner, service.alpha.siteId, async () => {
      problem = await expectRefused(technician.post('/mount-records', body), status, code, path)
    }),
  )
  if (!problem) throw new Error('nothing was sent')
  return problem
}

describe('a mount is refused, and nothing of it is written,', () => {
  it('where the position is unknown', async () => {
    await expectMountRefused({ positionId: randomUUID() }, 404, 'not-found', 'positionId')
  })

  it('where the position belongs to another site', async () => {
    await expectMountRefused({ positionId: service.beta.locating.id }, 404, 'not-found', 'positionId')
  })

  it('where the bearing type belongs to another site', async () => {
    const bearing = aBearing(service.alpha, { bearingTypeId: service.beta.bearingTypeId })
    await expectMountRefused({ bearing }, 404, 'not-found', 'bearing.bearingTypeId')
  })

  it('where the grease is not there', async () => {
    await expectMountRefused({ greaseId: randomUUID(), greaseBearingG: 100 }, 404, 'not-found', 'greaseId')
  })

  it.each([
    ['0001-01-01T00:00:00Z', true],
    ['0999-06-01T00:00:00Z', true],
    ['0205-06-01T00:00:00Z', false],
    ['9999-12-31T23:59:59-23:59', false],
  ])('where the year is none of the book: %s, signed: %s', async (mountedAt, sign) => {
    await expectMountRefused({ mountedAt, sign }, 400, 'request-invalid', 'mountedAt')
  })

  it('where the position is retired', async () => {
    const retired = await aSpot(service, { position: { retiredAt: new Date() } })
    const problem = await expectMountRefused({ positionId: retired.positionId }, 422, 'not-allowed-here', 'positionId')
    expect(problem.detail).toContain(retired.tag)
  })

  it('where the date lies in the future', async () => {
    const mountedAt = new Date(Date.now() + 6 * 60_000).toISOString()
    await expectMountRefused({ mountedAt }, 422, 'date-in-future', 'mountedAt')
  })

  it('where a clearance is below 0', async () => {
    const readings = typedReadings({ benchA: ['0.12'], benchB: ['-0.01'], mountedA: ['0.07'], mountedB: ['0.07'] })
    await expectMountRefused({ readings }, 422, 'reading-out-of-range', 'readings.1.typedValue')
  })

  it('where a clearance is above 2 mm, however it is confirmed', async () => {
    const over = { value: '2.001', confirmed: true }
    const readings = typedReadings({ benchA: ['0.12'], benchB: ['0.12'], mountedA: [over], mountedB: ['0.07'] })
    await expectMountRefused({ readings }, 422, 'reading-out-of-range', 'readings.2.typedValue')
  })

  it('where a reading is no number', async () => {
    const readings = typedReadings({ benchA: ['about a tenth'], benchB: ['0.12'] })
    await expectMountRefused({ readings }, 400, 'request-invalid', 'readings.0.typedValue')
  })

  it('where 1.3 was typed and 0.13 is likely, which is offered', async () => {
    const readings = typedReadings({ benchA: ['1,3'], benchB: ['0.12'], mountedA: ['0.07'], mountedB: ['0.07'] })
    const problem = await expectMountRefused({ readings }, 422, 'reading-unlikely', 'readings.0.typedValue')
    expect(problem.fields[0]?.suggestions).toContainEqual({ label: '0.130 mm', typedValue: '0.13', typedUnit: 'mm' })
    expect(problem.fields[0]?.suggestions).toContainEqual({ label: '1.3 thou', typedValue: '1.3', typedUnit: 'thou' })
  })

  it('where the readings are in different units', async () => {
    const readings = typedReadings({ benchA: ['0.12'], benchB: [{ value: '120', unit: 'um' }] })
    await expectMountRefused({ readings }, 422, 'units-mixed', 'readings.1.typedValue')
  })

  it('where a unit behind the number differs from the others', async () => {
    const readings = typedReadings({ benchA: ['0.12'], benchB: ['120 um'] })
    await expectMountRefused({ readings }, 422, 'units-mixed', 'readings.1.typedValue')
  })

  it.each([
    ['bench', { benchA: ['0.12', '0.12'], mountedA: ['0.07'], mountedB: ['0.07'] }],
    ['mounted', { benchA: ['0.12'], benchB: ['0.12'], mountedB: ['0.07', '0.07'] }],
  ])('where the second row of the %s readings is missing', async (moment, rows) => {
    const problem = await expectMountRefused({ readings: typedReadings(rows) }, 422, 'row-missing', 'readings')
    expect(problem.detail).toContain(moment)
  })

  it('where there are no readings at all', async () => {
    const problem = await expectMountRefused({ readings: [] }, 422, 'row-missing', 'readings')
    expect(problem.fields).toHaveLength(2)
  })

  it('where it finished over its band without a reason', async () => {
    const problem = await expectMountRefused({ readings: overReadings }, 422, 'reason-missing', 'outOfBandReason')
    expect(problem.detail).toContain('63 µm')
    expect(problem.detail).toContain('45 to 60 µm')
  })

  it('where the residual clearance is not proven and no reason is given', async () => {
    // 55 µm reduction inside 45 to 60 µm, but 57 µm left: within U = 11.1 µm of the residual minimum of 50 µm
    const readings = typedReadings({ benchA: ['0.112'], benchB: ['0.112'], mountedA: ['0.057'], mountedB: ['0.057'] })
    await expectMountRefused({ readings }, 422, 'reason-missing', 'outOfBandReason')
  })

  it('where neither the hours nor a reason for their absence is given', async () => {
    await expectMountRefused({ meterShowsHours: null }, 422, 'hours-or-reason', 'meterShowsHours')
  })

  it('where the meter would go backwards', async () => {
    await expectMountRefused({ meterShowsHours: 999 }, 422, 'meter-backwards', 'meterShowsHours')
  })

  it('where the meter ran faster than the clock', async () => {
    // 80 days are 1920 h
    await expectMountRefused({ meterShowsHours: 1000 + 1920 + 100 }, 422, 'not-allowed-here', 'meterShowsHours')
  })

  it('where the machine has no meter but hours were entered', async () => {
    const { positionId } = await aSpot(service, { meter: false })
    await expectMountRefused({ positionId }, 422, 'not-allowed-here', 'meterShowsHours')
  })

  it('where it was done by feel and nobody is named', async () => {
    await expectMountRefused({ method: 'by-feel', readings: [] }, 400, 'request-invalid', 'byFeelPerson')
  })

  it('where it was done by drive-up and none is entered', async () => {
    await expectMountRefused(
      { method: 'drive-up', readings: [], outOfBandReason: 'No feeler' },
      400,
      'request-invalid',
      'driveUpMm',
    )
  })

  it('where the reason for the mount is missing', async () => {
    await expectMountRefused({ reason: '' }, 400, 'request-invalid', 'reason')
  })

  it('where a removal is told but nothing is fitted', async () => {
    await expectMountRefused({ removal: plannedRemoval }, 422, 'nothing-fitted', 'removal')
  })

  it('where the bearing has another basic code', async () => {
    const type = aBearingType({ siteId: service.alpha.siteId, basicCode: '22222' })
    await insert(service.owner, service.alpha.siteId, 'bearing_type', [type])
    const bearing = aBearing(service.alpha, { bearingTypeId: type.id })
    const problem = await expectMountRefused({ bearing, sign: false }, 422, 'not-allowed-here', 'bearing.bearingTypeId')
    expect(problem.detail).toContain('22222 K/C3')
    expect(problem.detail).toContain('22220')
  })

  it('where the bearing has a cylindrical bore and the position takes a tapered one', async () => {
    const type = aBearingType({ siteId: service.alpha.siteId, taper: null })
    await insert(service.owner, service.alpha.siteId, 'bearing_type', [type])
    const bearing = aBearing(service.alpha, { bearingTypeId: type.id })
    await expectMountRefused({ bearing, sign: false }, 422, 'not-allowed-here', 'bearing.bearingTypeId')
  })

  it('where a bearing that is registered is said to be of another type', async () => {
    const other = aBearingType({ siteId: service.alpha.siteId, designation: '22220 K/C3 brass' })
    await insert(service.owner, service.alpha.siteId, 'bearing_type', [other])
    const bearing = aBearing(service.alpha)
    await technician.post(
      '/mount-records',
      aMount(service.alpha, { positionId: spot.positionId, bearing, sign: false }),
    )
    await expectMountRefused(
      { bearing: { ...bearing, bearingTypeId: other.id } },
      422,
      'not-allowed-here',
      'bearing.bearingTypeId',
    )
  })

  it('where the serial number is registered for another bearing', async () => {
    const first = aBearing(service.alpha, { serial: 'TB-7001' })
    const draft = aMount(service.alpha, { positionId: spot.positionId, bearing: first, sign: false })
    await technician.post('/mount-records', draft).expect(201)
    const bearing = aBearing(service.alpha, { serial: 'TB-7001' })
    await expectMountRefused({ bearing }, 409, 'name-already-used', 'bearing.serial')
  })
})

describe('a class that the position does not take', () => {
  it('is signed by the engineer, not by the technician', async () => {
    const type = aBearingType({ siteId: service.alpha.siteId, clearanceClass: 'C4' })
    await insert(service.owner, service.alpha.siteId, 'bearing_type', [type])
    const { positionId } = await aSpot(service)
    // C4 is 140 to 180 µm on the bench; its residual minimum is 80 µm
    const readings = typedReadings({ benchA: ['0.16'], benchB: ['0.16'], mountedA: ['0.105'], mountedB: ['0.105'] })
    const body = aMount(service.alpha, {
      positionId,
      bearing: aBearing(service.alpha, { bearingTypeId: type.id }),
      readings,
    })
    await expectRefused(technician.post('/mount-records', body), 422, 'not-allowed-here', 'bearing.bearingTypeId')
    const reply = await engineer.post('/mount-records', body).expect(201)
    expect(reply.body).toMatchObject({ clearanceClass: 'C4', judgement: { verdict: 'inside', residualMinUm: 80 } })
  })
})

describe('a position that carries a bearing', () => {
  it('takes another one only with the removal of the first, whose bearing the refusal names', async () => {
    const { positionId, tag } = await aSpot(service)
    const bearing = aBearing(service.alpha, { serial: 'TB-7100' })
    await technician.post('/mount-records', aMount(service.alpha, { positionId, bearing })).expect(201)
    const again = { positionId, mountedAt: daysOn(service.alpha, 85), meterShowsHours: 2600 }
    const problem = await expectMountRefused(again, 409, 'position-occupied', 'removal')
    expect(problem.detail).toContain(tag)
    expect(problem.detail).toContain('22220 K/C3 no. TB-7100')
  })

  it('is not left before it was taken', async () => {
    const { positionId } = await aSpot(service)
    await technician.post('/mount-records', aMount(service.alpha, { positionId })).expect(201)
    const before = { positionId, mountedAt: daysOn(service.alpha, 79), meterShowsHours: 2490, removal: plannedRemoval }
    await expectMountRefused(before, 422, 'removal-before-mounting', 'mountedAt')
  })

  it('does not carry a second one in time that is past', async () => {
    const { positionId } = await aSpot(service)
    await technician.post('/mount-records', aMount(service.alpha, { positionId })).expect(201)
    const removal = { id: randomUUID(), positionId, removedAt: daysOn(service.alpha, 85), ...plannedRemoval }
    await technician.post('/removals', { ...removal, meterShowsHours: 2600 }).expect(201)
    const between = { positionId, mountedAt: daysOn(service.alpha, 82), meterShowsHours: 2550 }
    await expectMountRefused(between, 409, 'position-occupied', 'positionId')
  })

  it('keeps its bearing: that one goes on nowhere else', async () => {
    const { positionId, tag } = await aSpot(service)
    const bearing = aBearing(service.alpha)
    await technician.post('/mount-records', aMount(service.alpha, { positionId, bearing })).expect(201)
    const problem = await expectMountRefused({ bearing }, 409, 'bearing-fitted-elsewhere', 'bearing.id')
    expect(problem.detail).toContain(tag)
  })

  it('loses its bearing only for an end that makes sense', async () => {
    const { positionId } = await aSpot(service)
    await technician.post('/mount-records', aMount(service.alpha, { positionId })).expect(201)
    const again = { positionId, mountedAt: daysOn(service.alpha, 85), meterShowsHours: 2600 }
    const removal = { ...plannedRemoval, modeClause: '5.1.2' }
    await expectMountRefused({ ...again, removal }, 422, 'not-allowed-here', 'removal.modeClause')
    const unknown = { endKind: 'failed', modeClause: '5.9.9', observer: 'Ada Brunn' }
    await expectMountRefused({ ...again, removal: unknown }, 422, 'not-allowed-here', 'removal.modeClause')
  })
})

describe('who may', () => {
  it('log a mount: not the stores clerk', async () => {
    const stores = await service.signIn(service.alpha.people.stores, 'alpha')
    const reply = await stores.post('/mount-records', aMount(service.alpha, { positionId: spot.positionId }))
    expect(reply.status).toBe(403)
    expect(reply.body.code).toBe('role-not-allowed')
  })

  it('log at a site: not a person of another one', async () => {
    const reply = await service.app.inject({ method: 'GET', url: '/api/v1/sites/alpha/mount-records' })
    expect(reply.statusCode).toBe(401)
    const stranger = await service.signIn(service.beta.people.technician, 'alpha')
    const refusal = await stranger.post('/mount-records', aMount(service.alpha, { positionId: spot.positionId }))
    expect(refusal.status).toBe(404)
  })
})
