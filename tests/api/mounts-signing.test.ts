import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { aPosition } from '../../seeds/builders/position-rows.ts'
import { aShaft } from '../../seeds/builders/site-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { countStatements } from '../support/statements.ts'
import {
  aBearing,
  aMount,
  ask,
  aSpot,
  daysOn,
  expectNothingWritten,
  expectRefused,
  insert,
  insideReadings,
  overReadings,
  plannedRemoval,
  rowCounts,
  typedReadings,
  type Spot,
} from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let siteId: string
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  siteId = service.alpha.siteId
})

interface FitmentRow {
  bearing_id: string
  fitted_at: Date
  removed_at: Date | null
  start_run_hours: number | null
  end_run_hours: number | null
  run_hours: number | null
  hours_source: string
  entry_age_hours: number
  mount_record_id: string | null
  removal_id: string | null
}

function fitmentsOf(spot: Spot): Promise<FitmentRow[]> {
  const text = 'select * from fitment where position_id = $1 order by fitted_at'
  return ask<FitmentRow>(service.owner, siteId, text, [spot.positionId])
}

async function openFlags(spot: Spot): Promise<string[]> {
  const reply = await technician.get(`/flags?positionId=${spot.positionId}`).expect(200)
  return reply.body.items.map((flag: { kind: string }) => flag.kind).sort()
}

describe('signing a mount', () => {
  it('opens the stay of the bearing, keeps the meter reading and answers with the whole record', async () => {
    const spot = await aSpot(service)
    const body = aMount(service.alpha, {
      positionId: spot.positionId,
      bearing: aBearing(service.alpha, { serial: 'TB-1', lot: 'L9', packedOn: '2026-01-05' }),
    })
    const reply = await technician.post('/mount-records', body).expect(201)
    expect(reply.body).toMatchObject({
      id: body.id,
      positionId: spot.positionId,
      tag: spot.tag,
      bearing: { ...body.bearing, maker: null, designation: '22220 K/C3', boreMm: 100, taper: '1:12' },
      clearanceClass: 'C3',
      mountedAt: body.mountedAt,
      runHours: 2500,
      signedBy: service.alpha.people.technician.name,
      correctsId: null,
      correctedById: null,
    })
    expect(reply.headers['etag']).toBe(`"${reply.body.version}"`)
    expect((await technician.get(`/mount-records/${body.id}`).expect(200)).body).toEqual(reply.body)
    expect(await fitmentsOf(spot)).toMatchObject([
      {
        bearing_id: body.bearing.id,
        fitted_at: new Date(body.mountedAt),
        removed_at: null,
        start_run_hours: 2500,
        mount_record_id: body.id,
      },
    ])
    const readings = await technician.get(`/meter-readings?meterId=${spot.meterId}`).expect(200)
    expect(readings.body.items.map((reading: { totalHours: number }) => reading.totalHours)).toEqual([2500, 1000])
  })

  it('takes a reason where there is no hour reading', async () => {
    const spot = await aSpot(service, { meter: false })
    const over = { positionId: spot.positionId, meterShowsHours: null, noHoursReason: 'No meter on this machine' }
    const reply = await technician.post('/mount-records', aMount(service.alpha, over)).expect(201)
    expect(reply.body).toMatchObject({ runHours: null, noHoursReason: 'No meter on this machine' })
    expect(await fitmentsOf(spot)).toMatchObject([{ start_run_hours: null, hours_source: 'none' }])
  })

  it('sets a clock right that runs a few minutes ahead', async () => {
    const spot = await aSpot(service)
    const mountedAt = new Date(Date.now() + 4 * 60_000).toISOString()
    const body = aMount(service.alpha, { positionId: spot.positionId, mountedAt })
    const reply = await technician.post('/mount-records', body).expect(201)
    expect(Date.parse(reply.body.mountedAt)).toBeLessThanOrEqual(Date.now())
  })

  it('writes the first fill down as a greasing, so that the position is not taken as never greased', async () => {
    const spot = await aSpot(service)
    const grease = { greaseId: service.alpha.greaseId, greaseBearingG: 160, greaseHousingG: 55.5 }
    const body = aMount(service.alpha, { positionId: spot.positionId, ...grease })
    await technician.post('/mount-records', body).expect(201)
    const greasings = await technician.get(`/greasings?positionId=${spot.positionId}`).expect(200)
    expect(greasings.body.items).toMatchObject([
      {
        kind: 'initial-fill',
        doseG: 215.5,
        greasedAt: body.mountedAt,
        runHours: 2500,
        windowResult: 'no-window',
        planId: spot.planId,
      },
    ])
    expect(await openFlags(spot)).toEqual([])
  })

  it('refuses a first fill with another grease than the plan has, and writes nothing', async () => {
    const spot = await aSpot(service)
    const engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
    const greaseId = randomUUID()
    await engineer
      .post('/greases', { id: greaseId, name: 'Sedge PU 2', thickener: 'polyurea', nlgiGrade: '2' })
      .expect(201)
    const body = aMount(service.alpha, { positionId: spot.positionId, greaseId, greaseBearingG: 160 })
    await expectNothingWritten(service.owner, siteId, async () => {
      const problem = await expectRefused(
        technician.post('/mount-records', body),
        422,
        'grease-not-planned',
        'greaseId',
      )
      expect(problem.detail).toContain('Sedge PU 2')
      expect(problem.detail).toContain('Marl EP 2')
    })
  })
})

describe('the same request again', () => {
  it('answers with the first record and writes nothing more', async () => {
    const { positionId } = await aSpot(service)
    const body = aMount(service.alpha, { positionId })
    const first = await technician.post('/mount-records', body).expect(201)
    await expectNothingWritten(service.owner, siteId, async () => {
      const second = await technician.post('/mount-records', body).expect(201)
      expect(second.body).toEqual(first.body)
    })
  })

  it('at the same time makes one record', async () => {
    const spot = await aSpot(service)
    const body = aMount(service.alpha, { positionId: spot.positionId })
    const replies = await Promise.all([1, 2, 3].map(() => technician.post('/mount-records', body)))
    expect(replies.map((reply) => reply.status)).toEqual([201, 201, 201])
    expect(replies[1]?.body).toEqual(replies[0]?.body)
    expect(replies[2]?.body).toEqual(replies[0]?.body)
    expect(await fitmentsOf(spot)).toHaveLength(1)
  })

  it('with another body is refused and the first record stays', async () => {
    const { positionId } = await aSpot(service)
    const body = aMount(service.alpha, { positionId })
    await technician.post('/mount-records', body).expect(201)
    await expectNothingWritten(service.owner, siteId, async () => {
      await expectRefused(
        technician.post('/mount-records', { ...body, fitter: 'Someone else' }),
        409,
        'id-already-used',
        'id',
      )
    })
    expect((await technician.get(`/mount-records/${body.id}`)).body.fitter).toBe('Ada Brunn')
  })
})

describe('two people who mount at one position at once', () => {
  it('get one mount and one refusal', async () => {
    const spot = await aSpot(service)
    const bodies = [1, 2].map(() => aMount(service.alpha, { positionId: spot.positionId }))
    const replies = await Promise.all(bodies.map((body) => technician.post('/mount-records', body)))
    expect(replies.map((reply) => reply.status).toSorted((a, b) => a - b)).toEqual([201, 409])
    expect(replies.find((reply) => reply.status === 409)?.body.code).toBe('position-occupied')
    expect(await fitmentsOf(spot)).toHaveLength(1)
  })
})

describe('two machines that take the same bearing at once', () => {
  it('get one mount and one refusal', async () => {
    const bearing = aBearing(service.alpha, { serial: 'TB-30' })
    const spots = [await aSpot(service), await aSpot(service)]
    const bodies = spots.map(({ positionId }) => aMount(service.alpha, { positionId, bearing }))
    const first = await technician.post('/mount-records', { ...bodies[0], id: randomUUID(), sign: false })
    expect(first.status).toBe(201)
    const replies = await Promise.all(bodies.map((body) => technician.post('/mount-records', body)))
    expect(replies.map((reply) => reply.status).toSorted((a, b) => a - b)).toEqual([201, 409])
    expect(replies.find((reply) => reply.status === 409)?.body.code).toBe('bearing-fitted-elsewhere')
  })
})

describe('the statements of a signature', () => {
  it('are as many for 40 readings as for 6, and for 12 positions on the machine as for 1', async () => {
    const [small, large] = [await aSpot(service), await aSpot(service)]
    const { owner, alpha } = service
    const shaft = aShaft({ siteId, machineId: large.machineId, code: 'TD' })
    const more = Array.from({ length: 11 }, () => {
      return aPosition({ siteId, shaftId: shaft.id, bearingTypeId: alpha.bearingTypeId, locating: false })
    })
    await insert(owner, siteId, 'shaft', [shaft])
    await insert(owner, siteId, 'position', more)
    const ten = (value: string) => Array.from({ length: 10 }, () => value)
    const readings = typedReadings({
      benchA: ten('0.12'),
      benchB: ten('0.13'),
      mountedA: ten('0.07'),
      mountedB: ten('0.07'),
    })
    const sign = (over: object) => technician.post('/mount-records', aMount(alpha, { ...over })).expect(201)
    const few = await countStatements(() => sign({ positionId: small.positionId }))
    expect(await countStatements(() => sign({ positionId: large.positionId, readings }))).toBe(few)
    expect(few).toBeLessThan(60)
  })
})

describe('a remount', () => {
  const failed = { endKind: 'failed', modeClause: '5.1.2', cause: 'Under-greased', observer: 'Ada Brunn' }

  it('closes the old stay with its run hours and opens the new one in the same moment', async () => {
    const spot = await aSpot(service)
    const { positionId } = spot
    const first = aMount(service.alpha, { positionId })
    await technician.post('/mount-records', first).expect(201)
    const second = aMount(service.alpha, {
      positionId,
      mountedAt: daysOn(service.alpha, 85),
      meterShowsHours: 2612.5,
      removal: failed,
    })
    await technician.post('/mount-records', second).expect(201)
    const [old, now] = await fitmentsOf(spot)
    const at = new Date(second.mountedAt)
    expect(old).toMatchObject({
      removed_at: at,
      start_run_hours: 2500,
      end_run_hours: 2612.5,
      run_hours: 112.5,
      hours_source: 'meter',
    })
    expect(now).toMatchObject({ fitted_at: at, removed_at: null, start_run_hours: 2612.5, mount_record_id: second.id })
    const removals = await technician.get(`/removals?positionId=${positionId}`).expect(200)
    expect(removals.body.items).toMatchObject([
      {
        id: old?.removal_id,
        endKind: 'failed',
        modeClause: '5.1.2',
        removedAt: second.mountedAt,
        runHours: 2612.5,
        lifeHours: 112.5,
        hoursSource: 'meter',
      },
    ])
    expect(removals.body.items[0].modeTerm).toMatch(/fatigue/i)
  })

  it('takes days times hours a day where the meter was not read, and marks it as an estimate', async () => {
    const spot = await aSpot(service, { machine: { hoursPerDay: 16 }, meter: false })
    const none = { positionId: spot.positionId, meterShowsHours: null, noHoursReason: 'No meter' }
    await technician
      .post('/mount-records', aMount(service.alpha, { ...none, mountedAt: daysOn(service.alpha, 60) }))
      .expect(201)
    const second = aMount(service.alpha, { ...none, mountedAt: daysOn(service.alpha, 85), removal: plannedRemoval })
    await technician.post('/mount-records', second).expect(201)
    // 25 days at 16 h
    expect((await fitmentsOf(spot))[0]).toMatchObject({ run_hours: 400, hours_source: 'estimate', end_run_hours: null })
  })

  it('of a bearing that ran before starts with the hours that it has', async () => {
    const [from, to] = [await aSpot(service), await aSpot(service)]
    const bearing = aBearing(service.alpha, { serial: 'TB-20' })
    await technician.post('/mount-records', aMount(service.alpha, { positionId: from.positionId, bearing })).expect(201)
    const removal = {
      id: randomUUID(),
      positionId: from.positionId,
      removedAt: daysOn(service.alpha, 85),
      meterShowsHours: 2600,
    }
    await technician.post('/removals', { ...removal, ...plannedRemoval }).expect(201)
    const body = aMount(service.alpha, { positionId: to.positionId, bearing, mountedAt: daysOn(service.alpha, 86) })
    await technician.post('/mount-records', body).expect(201)
    expect(await fitmentsOf(to)).toMatchObject([{ bearing_id: bearing.id, entry_age_hours: 100 }])
  })

  it.each(['fitment', 'removal', 'meter_reading', 'grease_due', 'flag', 'audit_entry'])(
    'leaves nothing behind where the database breaks while it writes %s',
    async (table) => {
      const { positionId } = await aSpot(service)
      await technician.post('/mount-records', aMount(service.alpha, { positionId })).expect(201)
      const second = aMount(service.alpha, {
        positionId,
        mountedAt: daysOn(service.alpha, 85),
        meterShowsHours: 2600,
        removal: failed,
        readings: overReadings,
        outOfBandReason: 'Went in hard',
        greaseId: service.alpha.greaseId,
        greaseBearingG: 160,
      })
      await service.owner.query(`
        create function break_here() returns trigger language plpgsql as $$ begin raise exception 'broken on purpose'; end $$;
        create trigger zz_break_here before insert on ${table} for each row execute function break_here()`)
      try {
        const before = await rowCounts(service.owner, siteId)
        const reply = await technician.post('/mount-records', second)
        expect(reply.status).toBe(500)
        expect(reply.body).toMatchObject({ code: 'internal-error' })
        expect(JSON.stringify(reply.body)).not.toContain('broken on purpose')
        expect(await rowCounts(service.owner, siteId)).toEqual(before)
      } finally {
        await service.owner.query('drop function break_here() cascade')
      }
      await technician.post('/mount-records', second).expect(201)
    },
  )
})

describe('flags', () => {
  it('follow a mount over its band, and its remount inside, at once', async () => {
    const spot = await aSpot(service)
    const { positionId } = spot
    const over = {
      positionId,
      readings: overReadings,
      outOfBandReason: 'Went in hard',
      greaseId: service.alpha.greaseId,
      greaseBearingG: 160,
    }
    await technician.post('/mount-records', aMount(service.alpha, over)).expect(201)
    expect(await openFlags(spot)).toEqual(['mount-over'])
    const again = { positionId, mountedAt: daysOn(service.alpha, 85), meterShowsHours: 2600, removal: plannedRemoval }
    await technician
      .post(
        '/mount-records',
        aMount(service.alpha, { ...again, greaseId: service.alpha.greaseId, greaseBearingG: 160 }),
      )
      .expect(201)
    expect(await openFlags(spot)).toEqual([])
  })

  it('follow a correction that shows the mount to be inside its band', async () => {
    const spot = await aSpot(service)
    const over = aMount(service.alpha, {
      positionId: spot.positionId,
      readings: overReadings,
      outOfBandReason: 'Went in hard',
    })
    await technician.post('/mount-records', over).expect(201)
    expect(await openFlags(spot)).toEqual(['mount-over', 'never-greased'])
    const { positionId: _position, bearing: _bearing, meterShowsHours: _hours, sign: _sign, ...sheet } = over
    const correction = {
      ...sheet,
      id: randomUUID(),
      correctionReason: 'Read the wrong blade',
      readings: insideReadings,
    }
    await technician.post(`/mount-records/${over.id}/corrections`, correction).expect(201)
    expect(await openFlags(spot)).toEqual(['never-greased'])
  })
})

describe('a draft', () => {
  it('is judged as far as it goes and opens no stay', async () => {
    const spot = await aSpot(service)
    const readings = typedReadings({ benchA: ['0.12'], benchB: ['0.13'], mountedA: ['0.07'] })
    const body = aMount(service.alpha, { positionId: spot.positionId, readings, sign: false, meterShowsHours: null })
    const reply = await technician.post('/mount-records', body).expect(201)
    expect(reply.body).toMatchObject({
      signedAt: null,
      fitmentId: null,
      judgement: {
        benchMeanUm: 125,
        mountedMeanUm: null,
        reductionUm: null,
        verdict: null,
        residual: null,
        band: { minUm: 45, maxUm: 60 },
      },
    })
    expect(await fitmentsOf(spot)).toEqual([])
  })

  it('is changed and then signed with the version that was read', async () => {
    const spot = await aSpot(service)
    const body = aMount(service.alpha, { positionId: spot.positionId, readings: [], sign: false })
    const draft = await technician.post('/mount-records', body).expect(201)
    const { id: _id, positionId: _position, sign: _sign, ...contents } = body
    const change = { ...contents, fitter: 'Bo Lund', readings: insideReadings }
    const changed = await technician.patch(`/mount-records/${body.id}`, change, draft.body.version).expect(200)
    expect(changed.body).toMatchObject({ fitter: 'Bo Lund', judgement: { verdict: 'inside' } })
    expect(changed.body.readings).toHaveLength(6)
    const signed = await technician
      .postIfMatch(`/mount-records/${body.id}/signature`, {}, changed.body.version)
      .expect(200)
    expect(signed.body.signedBy).toBe(service.alpha.people.technician.name)
    expect(await fitmentsOf(spot)).toMatchObject([{ mount_record_id: body.id, start_run_hours: 2500 }])
  })

  it('keeps what is told of the bearing that comes out until it is signed with it', async () => {
    const spot = await aSpot(service)
    await technician.post('/mount-records', aMount(service.alpha, { positionId: spot.positionId })).expect(201)
    const at = { mountedAt: daysOn(service.alpha, 85), meterShowsHours: 2600 }
    const begun = { endKind: null, evidence: 'Grease grey, ring blue' }
    const body = aMount(service.alpha, { positionId: spot.positionId, ...at, sign: false, removal: begun })
    const draft = (await technician.post('/mount-records', body).expect(201)).body
    expect(draft.removal).toMatchObject({ ...begun, observer: '', modeClause: null })

    const sign = (version: number) => technician.postIfMatch(`/mount-records/${body.id}/signature`, {}, version)
    const change = async (removal: object, version: number) => {
      const { id: _id, positionId: _position, sign: _sign, ...contents } = body
      return (await technician.patch(`/mount-records/${body.id}`, { ...contents, removal }, version).expect(200)).body
    }
    await expectNothingWritten(service.owner, siteId, () =>
      expectRefused(sign(draft.version), 400, 'request-invalid', 'removal.endKind'),
    )
    const failed = await change({ ...begun, endKind: 'failed' }, draft.version)
    await expectRefused(sign(failed.version), 400, 'request-invalid', 'removal.observer')
    const whole = await change({ ...begun, endKind: 'failed', observer: 'Ada Brunn' }, failed.version)
    const signed = (await sign(whole.version).expect(200)).body
    expect(signed.removal).toBeNull()
    const removals = await technician.get(`/removals?positionId=${spot.positionId}`).expect(200)
    expect(removals.body.items).toMatchObject([{ endKind: 'failed', evidence: begun.evidence, observer: 'Ada Brunn' }])
  })

  it('is signed by the removal that is told with the signature, before its own', async () => {
    const spot = await aSpot(service)
    await technician.post('/mount-records', aMount(service.alpha, { positionId: spot.positionId })).expect(201)
    const at = { mountedAt: daysOn(service.alpha, 85), meterShowsHours: 2600 }
    const removal = { endKind: 'lost', observer: 'Bo Lund' }
    const body = aMount(service.alpha, { positionId: spot.positionId, ...at, sign: false, removal })
    const { version } = (await technician.post('/mount-records', body).expect(201)).body
    await technician
      .postIfMatch(`/mount-records/${body.id}/signature`, { removal: plannedRemoval }, version)
      .expect(200)
    const removals = await technician.get(`/removals?positionId=${spot.positionId}`).expect(200)
    expect(removals.body.items).toMatchObject([plannedRemoval])
  })

  it('is not changed or signed by a version that is stale or left out', async () => {
    const { positionId } = await aSpot(service)
    const body = aMount(service.alpha, { positionId, sign: false })
    const { version } = (await technician.post('/mount-records', body).expect(201)).body
    const { id: _id, positionId: _position, sign: _sign, ...contents } = body
    await technician.patch(`/mount-records/${body.id}`, { ...contents, note: 'x' }, version).expect(200)
    await expectNothingWritten(service.owner, siteId, async () => {
      const stale = await technician.patch(`/mount-records/${body.id}`, contents, version)
      expect([stale.status, stale.body.code]).toEqual([412, 'version-stale'])
      const staleSignature = await technician.postIfMatch(`/mount-records/${body.id}/signature`, {}, version)
      expect([staleSignature.status, staleSignature.body.code]).toEqual([412, 'version-stale'])
      const missing = await technician.post(`/mount-records/${body.id}/signature`, {})
      expect([missing.status, missing.body.code]).toEqual([428, 'if-match-missing'])
    })
    expect((await technician.get(`/mount-records/${body.id}`)).body.note).toBe('x')
  })

  it('that is signed is changed and signed no more', async () => {
    const { positionId } = await aSpot(service)
    const body = aMount(service.alpha, { positionId })
    const { version } = (await technician.post('/mount-records', body).expect(201)).body
    const { id: _id, positionId: _position, sign: _sign, ...contents } = body
    const change = await technician.patch(`/mount-records/${body.id}`, contents, version)
    expect([change.status, change.body.code]).toEqual([409, 'already-signed'])
    const signature = await technician.postIfMatch(`/mount-records/${body.id}/signature`, {}, version)
    expect([signature.status, signature.body.code]).toEqual([409, 'already-signed'])
  })

  it('whose signature is sent again under its own id is answered with the record, however its version moved on', async () => {
    const { positionId } = await aSpot(service)
    const body = aMount(service.alpha, { positionId, sign: false })
    const { version } = (await technician.post('/mount-records', body).expect(201)).body
    const sign = (told: object) => technician.postIfMatch(`/mount-records/${body.id}/signature`, told, version)
    const told = { changeId: randomUUID() }
    const [one, other] = await Promise.all([sign(told), sign(told)])
    expect([one.status, other.status]).toEqual([200, 200])
    await expectNothingWritten(service.owner, siteId, async () => {
      expect((await sign(told).expect(200)).body).toEqual(one.body)
      expect((await sign({ changeId: randomUUID() })).body.code).toBe('already-signed')
    })
  })

  it('of another site is not there', async () => {
    const body = aMount(service.alpha, { positionId: (await aSpot(service)).positionId, sign: false })
    await technician.post('/mount-records', body).expect(201)
    const stranger = await service.signIn(service.beta.people.engineer, 'beta')
    await stranger.get(`/mount-records/${body.id}`).expect(404)
    await expectRefused(stranger.postIfMatch(`/mount-records/${body.id}/signature`, {}, 1), 404, 'not-found', 'id')
  })
})

describe('the list of mount records', () => {
  it('is filtered by position, area, verdict, state and text, newest first, page by page', async () => {
    const spot = await aSpot(service)
    const { positionId } = spot
    const at = (days: number, over: object) =>
      aMount(service.alpha, { positionId, mountedAt: daysOn(service.alpha, days), ...over })
    const first = at(80, { readings: overReadings, outOfBandReason: 'Went in hard', fitter: 'Cy Stone' })
    const second = at(82, { meterShowsHours: 2550, removal: plannedRemoval })
    const draft = at(84, { sign: false })
    for (const body of [first, second, draft]) await technician.post('/mount-records', body).expect(201)
    const list = async (query: string): Promise<string[]> => {
      const reply = await technician.get(`/mount-records?positionId=${positionId}${query}`).expect(200)
      return reply.body.items.map((item: { id: string }) => item.id)
    }
    expect(await list('')).toEqual([draft.id, second.id, first.id])
    expect(await list('&verdict=over')).toEqual([first.id])
    expect(await list('&state=draft')).toEqual([draft.id])
    expect(await list('&state=signed')).toEqual([second.id, first.id])
    expect(await list('&search=stone')).toEqual([first.id])
    expect(await list(`&areaId=${service.alpha.areaId}`)).toHaveLength(3)
    expect(await list(`&areaId=${randomUUID()}`)).toEqual([])
    const page = await technician.get(`/mount-records?positionId=${positionId}&limit=2`).expect(200)
    expect(page.body.items[1]).toMatchObject({
      id: second.id,
      reductionUm: 55,
      bandMinUm: 45,
      bandMaxUm: 60,
      verdict: 'inside',
      signed: true,
    })
    expect(await list(`&limit=2&cursor=${page.body.nextCursor}`)).toEqual([first.id])
  })
})
