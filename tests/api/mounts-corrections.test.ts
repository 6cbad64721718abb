import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { aBearingType } from '../../seeds/builders/catalogue-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import {
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
  type Spot,
} from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let engineer: SiteAgent
let siteId: string
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
  siteId = service.alpha.siteId
})

/** Signs a mount at a spot of its own. */
async function mounted(over: Record<string, unknown> = {}) {
  const spot = await aSpot(service)
  const body = aMount(service.alpha, { positionId: spot.positionId, ...over })
  const record = (await technician.post('/mount-records', body).expect(201)).body
  return { spot, body, record }
}

function aCorrection(body: Record<string, unknown>, over: Record<string, unknown> = {}) {
  const { positionId: _position, bearing: _bearing, meterShowsHours: _hours, sign: _sign, ...sheet } = body
  return { ...sheet, id: randomUUID(), correctionReason: 'Written down wrong', ...over }
}

function correct(id: string, correction: object) {
  return technician.post(`/mount-records/${id}/corrections`, correction)
}

async function stay(spot: Spot) {
  const rows = await ask<{
    id: string
    fitted_at: Date
    removed_at: Date | null
    mount_record_id: string
    run_hours: number | null
    hours_source: string
  }>(service.owner, siteId, 'select * from fitment where position_id = $1 order by fitted_at', [spot.positionId])
  return rows
}

async function fills(spot: Spot) {
  const reply = await technician.get(`/greasings?positionId=${spot.positionId}`).expect(200)
  return reply.body.items
}

describe('correcting a mount', () => {
  it('adds a signed record of the same stay that counts from now on, and leaves the first as it was', async () => {
    const { spot, body, record } = await mounted({ readings: overReadings, outOfBandReason: 'Went in hard' })
    const correction = aCorrection(body, { readings: insideReadings, outOfBandReason: null, note: 'Wrong blade' })
    const reply = await correct(record.id, correction).expect(201)
    expect(reply.body).toMatchObject({
      id: correction.id,
      fitmentId: record.fitmentId,
      bearing: record.bearing,
      runHours: 2500,
      correctsId: record.id,
      correctionReason: 'Written down wrong',
      note: 'Wrong blade',
      signedBy: service.alpha.people.technician.name,
      judgement: { verdict: 'inside', reductionUm: 55 },
    })
    expect((await technician.get(`/mount-records/${record.id}`)).body).toEqual({
      ...record,
      correctedById: correction.id,
    })
    expect(await stay(spot)).toMatchObject([{ id: record.fitmentId, mount_record_id: correction.id }])
    const list = await technician.get(`/mount-records?positionId=${spot.positionId}`).expect(200)
    expect(list.body.items.map((item: { id: string }) => item.id)).toEqual([correction.id])
  })

  it('goes on from the latest record only', async () => {
    const { body, record } = await mounted()
    const first = aCorrection(body, { note: 'first' })
    await correct(record.id, first).expect(201)
    await expectNothingWritten(service.owner, siteId, async () => {
      await expectRefused(correct(record.id, aCorrection(body)), 409, 'already-corrected', 'id')
    })
    const second = aCorrection(body, { note: 'second' })
    const reply = await correct(first.id, second).expect(201)
    expect(reply.body).toMatchObject({ note: 'second', correctsId: first.id, fitmentId: record.fitmentId })
  })

  it('by two people at once leaves one correction', async () => {
    const { body, record } = await mounted()
    const replies = await Promise.all([correct(record.id, aCorrection(body)), correct(record.id, aCorrection(body))])
    expect(replies.map((reply) => reply.status).toSorted((a, b) => a - b)).toEqual([201, 409])
  })

  it('sent twice is one correction', async () => {
    const { body, record } = await mounted()
    const correction = aCorrection(body)
    const first = await correct(record.id, correction).expect(201)
    await expectNothingWritten(service.owner, siteId, async () => {
      expect((await correct(record.id, correction).expect(201)).body).toEqual(first.body)
      await expectRefused(correct(record.id, { ...correction, note: 'other' }), 409, 'id-already-used', 'id')
    })
  })

  it('is refused for a draft, which is changed instead', async () => {
    const { body, record } = await mounted({ sign: false })
    const reply = await correct(record.id, aCorrection(body))
    expect([reply.status, reply.body.code]).toEqual([422, 'not-allowed-here'])
  })

  it('is refused for a record of another site', async () => {
    const { body, record } = await mounted()
    const stranger = await service.signIn(service.beta.people.engineer, 'beta')
    const request = stranger.post(`/mount-records/${record.id}/corrections`, aCorrection(body))
    await expectRefused(request, 404, 'not-found', 'id')
  })

  it('is held to the same rules as a signature', async () => {
    const { body, record } = await mounted()
    const refusals: [Record<string, unknown>, number, string, string][] = [
      [{ readings: overReadings }, 422, 'reason-missing', 'outOfBandReason'],
      [{ readings: insideReadings.filter(({ row }) => row === 'A') }, 422, 'row-missing', 'readings'],
      [{ correctionReason: '' }, 400, 'request-invalid', 'correctionReason'],
      [{ mountedAt: new Date(Date.now() + 3_600_000).toISOString() }, 422, 'date-in-future', 'mountedAt'],
    ]
    await expectNothingWritten(service.owner, siteId, async () => {
      for (const [over, status, code, path] of refusals) {
        await expectRefused(correct(record.id, aCorrection(body, over)), status, code, path)
      }
    })
  })

  it('works when the position takes another bearing type by now', async () => {
    const { spot, body, record } = await mounted()
    const type = aBearingType({ siteId, basicCode: '22224' })
    await insert(service.owner, siteId, 'bearing_type', [type])
    const { version } = (await engineer.get(`/positions/${spot.positionId}`).expect(200)).body
    await engineer.patch(`/positions/${spot.positionId}`, { bearingTypeId: type.id }, version).expect(200)
    expect((await correct(record.id, aCorrection(body))).status).toBe(201)
  })

  it('leaves nothing behind where the database breaks in the middle', async () => {
    const { body, record } = await mounted()
    await service.owner.query(`
      create function break_here() returns trigger language plpgsql as $$ begin raise exception 'broken on purpose'; end $$;
      create trigger zz_break_here before update on fitment for each row execute function break_here()`)
    try {
      await expectNothingWritten(service.owner, siteId, async () => {
        expect((await correct(record.id, aCorrection(body))).status).toBe(500)
      })
    } finally {
      await service.owner.query('drop function break_here() cascade')
    }
    expect((await technician.get(`/mount-records/${record.id}`)).body.correctedById).toBeNull()
  })
})

describe('correcting the time of a mount', () => {
  it('moves the start of the stay and its first fill', async () => {
    const grease = { greaseId: service.alpha.greaseId, greaseBearingG: 160 }
    const { spot, body, record } = await mounted(grease)
    const mountedAt = daysOn(service.alpha, 82)
    await correct(record.id, aCorrection(body, { mountedAt })).expect(201)
    expect(await stay(spot)).toMatchObject([{ fitted_at: new Date(mountedAt) }])
    expect(await fills(spot)).toMatchObject([
      { kind: 'initial-fill', greasedAt: mountedAt, doseG: 160, correctionReason: 'Written down wrong' },
    ])
    const due = await technician.get('/due-greasings?limit=200').expect(200)
    expect(due.body.items.find((item: { positionId: string }) => item.positionId === spot.positionId)).toMatchObject({
      lastGreasedAt: mountedAt,
    })
  })

  it('is refused where another bearing was in at that time', async () => {
    const { spot, body } = await mounted()
    const next = {
      positionId: spot.positionId,
      mountedAt: daysOn(service.alpha, 85),
      meterShowsHours: 2600,
      removal: plannedRemoval,
    }
    const second = aMount(service.alpha, next)
    await technician.post('/mount-records', second).expect(201)
    const correction = aCorrection(body, { mountedAt: daysOn(service.alpha, 84) })
    await expectNothingWritten(service.owner, siteId, async () => {
      await expectRefused(correct(second.id, correction), 409, 'position-occupied', 'positionId')
    })
  })

  it('is refused where the bearing had left by then; otherwise estimated hours follow', async () => {
    const none = { meterShowsHours: null, noHoursReason: 'Meter not legible' }
    const { spot, body, record } = await mounted(none)
    const removal = { id: randomUUID(), positionId: spot.positionId, removedAt: daysOn(service.alpha, 85), ...none }
    await technician.post('/removals', { ...removal, ...plannedRemoval }).expect(201)
    expect(await stay(spot)).toMatchObject([{ run_hours: 120, hours_source: 'estimate' }])
    const late = aCorrection(body, { mountedAt: daysOn(service.alpha, 85), noHoursReason: undefined })
    await expectRefused(correct(record.id, late), 422, 'removal-before-mounting', 'mountedAt')
    const earlier = aCorrection(body, { mountedAt: daysOn(service.alpha, 75), noHoursReason: undefined })
    await correct(record.id, earlier).expect(201)
    // 10 days at 24 h
    expect(await stay(spot)).toMatchObject([{ run_hours: 240, hours_source: 'estimate' }])
  })
})

describe('correcting the hours of a mount', () => {
  interface Stay {
    start_run_hours: number | null
    end_run_hours: number | null
    run_hours: number | null
    hours_source: string
  }
  const hoursOf = (spot: Spot) =>
    ask<Stay>(
      service.owner,
      siteId,
      'select start_run_hours, end_run_hours, run_hours, hours_source from fitment where position_id = $1 order by fitted_at',
      [spot.positionId],
    )
  const readingsOf = async (spot: Spot) => {
    const reply = await technician.get(`/meter-readings?meterId=${spot.meterId}`).expect(200)
    return reply.body.items.map((item: { shownHours: number }) => item.shownHours)
  }
  const remove = (spot: Spot, meterShowsHours: number) => {
    const removal = { id: randomUUID(), positionId: spot.positionId, removedAt: daysOn(service.alpha, 85) }
    return technician.post('/removals', { ...removal, ...plannedRemoval, meterShowsHours }).expect(201)
  }

  it('corrects the reading that the mount went by; its stay and its first fill follow', async () => {
    const grease = { greaseId: service.alpha.greaseId, greaseBearingG: 160 }
    const { spot, body, record } = await mounted(grease)
    const reply = await correct(record.id, aCorrection(body, { meterShowsHours: 2050 })).expect(201)
    expect(reply.body).toMatchObject({ runHours: 2050, noHoursReason: null })
    expect(await hoursOf(spot)).toMatchObject([{ start_run_hours: 2050 }])
    expect(await readingsOf(spot)).toEqual([2050, 1000])
    expect(await fills(spot)).toMatchObject([{ runHours: 2050, doseG: 160 }])
    await remove(spot, 2110)
    expect(await hoursOf(spot)).toMatchObject([{ run_hours: 60, hours_source: 'meter' }])
  })

  it('counts a life that has ended anew, and that of the bearing that came out with the mount', async () => {
    const { spot } = await mounted({ mountedAt: daysOn(service.alpha, 60), meterShowsHours: 2000 })
    const next = { positionId: spot.positionId, meterShowsHours: 2450, removal: plannedRemoval }
    const second = aMount(service.alpha, next)
    await technician.post('/mount-records', second).expect(201)
    await remove(spot, 2500)
    expect(await hoursOf(spot)).toMatchObject([{ run_hours: 450 }, { run_hours: 50 }])
    await correct(second.id, aCorrection(second, { removal: undefined, meterShowsHours: 2420 })).expect(201)
    expect(await hoursOf(spot)).toMatchObject([
      { end_run_hours: 2420, run_hours: 420, hours_source: 'meter' },
      { start_run_hours: 2420, run_hours: 80, hours_source: 'meter' },
    ])
  })

  it('takes a reading that was left out', async () => {
    const { spot, body, record } = await mounted({ meterShowsHours: null, noHoursReason: 'Meter not legible' })
    await remove(spot, 2500)
    expect(await hoursOf(spot)).toMatchObject([{ run_hours: 120, hours_source: 'estimate' }])
    const right = { meterShowsHours: 2410, noHoursReason: undefined }
    const reply = await correct(record.id, aCorrection(body, right)).expect(201)
    expect(reply.body).toMatchObject({ runHours: 2410, noHoursReason: null })
    expect(await hoursOf(spot)).toMatchObject([{ start_run_hours: 2410, run_hours: 90, hours_source: 'meter' }])
  })

  it('takes hours back that were not read at the mount', async () => {
    const { spot, body, record } = await mounted()
    await remove(spot, 2550)
    const right = { noHoursReason: 'Read at another machine' }
    const reply = await correct(record.id, aCorrection(body, right)).expect(201)
    expect(reply.body).toMatchObject({ runHours: null, ...right })
    expect(await hoursOf(spot)).toMatchObject([{ start_run_hours: null, run_hours: 120, hours_source: 'estimate' }])
  })

  it('leaves them as they are where it does not tell of them, and adds no reading for the same number', async () => {
    const { spot, body, record } = await mounted()
    const first = aCorrection(body)
    expect((await correct(record.id, first).expect(201)).body.runHours).toBe(2500)
    await correct(first.id, aCorrection(body, { meterShowsHours: 2500 })).expect(201)
    expect(await hoursOf(spot)).toMatchObject([{ start_run_hours: 2500 }])
    expect(await readingsOf(spot)).toEqual([2500, 1000])
    const [{ count } = { count: -1 }] = await ask<{ count: number }>(
      service.owner,
      siteId,
      'select count(*)::int as count from meter_reading where meter_id = $1',
      [spot.meterId],
    )
    expect(count).toBe(2)
  })

  it('is refused where the meter cannot have shown that', async () => {
    const { body, record } = await mounted()
    await expectNothingWritten(service.owner, siteId, async () => {
      const wrong = correct(record.id, aCorrection(body, { meterShowsHours: 900 }))
      await expectRefused(wrong, 422, 'meter-backwards', 'meterShowsHours')
    })
  })
})

describe('correcting the grease of a mount', () => {
  const grease = () => ({ greaseId: service.alpha.greaseId, greaseBearingG: 160, greaseHousingG: 50 })

  it('corrects the first fill', async () => {
    const { spot, body, record } = await mounted(grease())
    await correct(record.id, aCorrection(body, { greaseHousingG: 70 })).expect(201)
    expect(await fills(spot)).toMatchObject([{ doseG: 230, kind: 'initial-fill' }])
  })

  it('withdraws a first fill that was not done', async () => {
    const { spot, body, record } = await mounted(grease())
    await correct(record.id, aCorrection(body, { greaseBearingG: null, greaseHousingG: null })).expect(201)
    expect(await fills(spot)).toEqual([])
    const flags = await technician.get(`/flags?positionId=${spot.positionId}`).expect(200)
    expect(flags.body.items.map((flag: { kind: string }) => flag.kind)).toEqual(['never-greased'])
  })

  it('writes down a first fill that was left out', async () => {
    const { spot, body, record } = await mounted()
    await correct(record.id, aCorrection(body, grease())).expect(201)
    expect(await fills(spot)).toMatchObject([{ doseG: 210, greasedAt: body.mountedAt }])
  })

  it('leaves a first fill alone that stays the same', async () => {
    const { spot, body, record } = await mounted(grease())
    const before = await fills(spot)
    await correct(record.id, aCorrection(body, { note: 'Gauge 3' })).expect(201)
    expect(await fills(spot)).toEqual(before)
  })
})
