import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import {
  aBearing,
  aMount,
  ask,
  aSpot,
  daysOn,
  expectNothingWritten,
  expectRefused,
  overReadings,
  type Spot,
} from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let siteId: string
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  siteId = service.alpha.siteId
})

/** A spot with a bearing that was mounted on day 80 at 2500 h. */
async function aMountedSpot(over: Record<string, unknown> = {}): Promise<Spot> {
  const spot = await aSpot(service)
  await technician.post('/mount-records', aMount(service.alpha, { positionId: spot.positionId, ...over })).expect(201)
  return spot
}

function aRemoval(spot: Spot, over: Record<string, unknown> = {}) {
  return {
    id: randomUUID(),
    positionId: spot.positionId,
    removedAt: daysOn(service.alpha, 85),
    endKind: 'failed',
    modeClause: '5.1.2',
    cause: 'Dirty grease',
    detection: 'Vibration',
    evidence: 'Spalls on the outer raceway, load zone',
    observer: 'Ada Brunn',
    meterShowsHours: 2600,
    ...over,
  }
}

async function fitmentsOf(spot: Spot) {
  const text = 'select * from fitment where position_id = $1 order by fitted_at'
  return await ask<Record<string, unknown>>(service.owner, siteId, text, [spot.positionId])
}

async function openFlags(spot: Spot): Promise<string[]> {
  const reply = await technician.get(`/flags?positionId=${spot.positionId}`).expect(200)
  return reply.body.items.map((flag: { kind: string }) => flag.kind).sort()
}

describe('a removal', () => {
  it('ends the stay with its run hours and clears the flags of the bearing', async () => {
    const spot = await aMountedSpot({ readings: overReadings, outOfBandReason: 'Went in hard' })
    expect(await openFlags(spot)).toEqual(['mount-over', 'never-greased'])
    const body = aRemoval(spot)
    const reply = await technician.post('/removals', body).expect(201)
    const { meterShowsHours: _hours, ...told } = body
    expect(reply.body).toMatchObject({
      ...told,
      runHours: 2600,
      noHoursReason: null,
      signedBy: service.alpha.people.technician.name,
      correctsId: null,
    })
    expect(reply.body.modeTerm).toMatch(/fatigue/i)
    expect((await technician.get(`/removals/${body.id}`).expect(200)).body).toEqual(reply.body)
    expect(await fitmentsOf(spot)).toMatchObject([
      {
        removed_at: new Date(body.removedAt),
        end_run_hours: 2600,
        run_hours: 100,
        hours_source: 'meter',
        removal_id: body.id,
      },
    ])
    expect(await openFlags(spot)).toEqual([])
  })

  it('may leave the mode open where it was not found out', async () => {
    const reply = await technician.post('/removals', aRemoval(await aMountedSpot(), { modeClause: null })).expect(201)
    expect(reply.body).toMatchObject({ endKind: 'failed', modeClause: null, modeTerm: null })
  })

  it('takes a reason for missing hours and estimates the life: 5 days at 24 h', async () => {
    const spot = await aMountedSpot()
    const none = { meterShowsHours: null, noHoursReason: 'Meter was dark' }
    const reply = await technician.post('/removals', aRemoval(spot, none)).expect(201)
    expect(reply.body).toMatchObject({ runHours: null, noHoursReason: 'Meter was dark' })
    expect(await fitmentsOf(spot)).toMatchObject([{ run_hours: 120, hours_source: 'estimate', end_run_hours: null }])
  })

  it('sent twice, or twice at once, is one removal', async () => {
    const body = aRemoval(await aMountedSpot())
    const replies = await Promise.all([technician.post('/removals', body), technician.post('/removals', body)])
    expect(replies.map((reply) => reply.status)).toEqual([201, 201])
    expect(replies[1]?.body).toEqual(replies[0]?.body)
    await expectNothingWritten(service.owner, siteId, async () => {
      expect((await technician.post('/removals', body).expect(201)).body).toEqual(replies[0]?.body)
      await expectRefused(technician.post('/removals', { ...body, cause: 'Other' }), 409, 'id-already-used', 'id')
    })
  })

  it('that was begun for a stay that is over is refused with what happened since', async () => {
    const spot = await aMountedSpot()
    const [begunFor] = await fitmentsOf(spot)
    const late = aRemoval(spot, { leavingFitmentId: begunFor?.['id'] })
    await technician.post('/removals', aRemoval(spot, { leavingFitmentId: begunFor?.['id'] })).expect(201)
    const left = await expectRefused(technician.post('/removals', late), 409, 'position-changed', 'leavingFitmentId')
    expect(left.detail).toMatch(/was taken out on .*, signed by /)
    const next = { positionId: spot.positionId, mountedAt: daysOn(service.alpha, 86), meterShowsHours: 2610 }
    await technician.post('/mount-records', aMount(service.alpha, next)).expect(201)
    const atNext = { ...late, removedAt: daysOn(service.alpha, 87), meterShowsHours: 2620 }
    await expectNothingWritten(service.owner, siteId, async () => {
      const came = await expectRefused(
        technician.post('/removals', atNext),
        409,
        'position-changed',
        'leavingFitmentId',
      )
      expect(came.detail).toMatch(/was taken out .*; .* was fitted on .*, signed by /)
    })
    const [, open] = await fitmentsOf(spot)
    await technician.post('/removals', { ...atNext, leavingFitmentId: open?.['id'] }).expect(201)
  })

  it('is refused, and nothing is written, where it does not fit', async () => {
    const spot = await aMountedSpot()
    const empty = await aSpot(service)
    const future = new Date(Date.now() + 3_600_000).toISOString()
    const refusals: [Record<string, unknown>, number, string, string][] = [
      [{ positionId: randomUUID() }, 404, 'not-found', 'positionId'],
      [{ positionId: service.beta.locating.id }, 404, 'not-found', 'positionId'],
      [{ positionId: empty.positionId }, 422, 'nothing-fitted', 'positionId'],
      [{ removedAt: daysOn(service.alpha, 79) }, 422, 'removal-before-mounting', 'removedAt'],
      [{ removedAt: daysOn(service.alpha, 80) }, 422, 'removal-before-mounting', 'removedAt'],
      [{ removedAt: future }, 422, 'date-in-future', 'removedAt'],
      [{ endKind: 'not-failed' }, 422, 'not-allowed-here', 'modeClause'],
      [{ endKind: 'lost' }, 422, 'not-allowed-here', 'modeClause'],
      [{ modeClause: '5.9' }, 422, 'not-allowed-here', 'modeClause'],
      [{ modeClause: 'worn' }, 400, 'request-invalid', 'modeClause'],
      [{ meterShowsHours: null }, 422, 'hours-or-reason', 'meterShowsHours'],
      [{ meterShowsHours: 2499 }, 422, 'meter-backwards', 'meterShowsHours'],
      [{ observer: '' }, 400, 'request-invalid', 'observer'],
    ]
    await expectNothingWritten(service.owner, siteId, async () => {
      for (const [over, status, code, path] of refusals) {
        await expectRefused(technician.post('/removals', aRemoval(spot, over)), status, code, path)
      }
    })
    expect(await fitmentsOf(spot)).toMatchObject([{ removed_at: null, removal_id: null }])
  })

  it('leaves nothing behind where the database breaks in the middle', async () => {
    const spot = await aMountedSpot()
    await service.owner.query(`
      create function break_here() returns trigger language plpgsql as $$ begin raise exception 'broken on purpose'; end $$;
      create trigger zz_break_here before update on fitment for each row execute function break_here()`)
    try {
      await expectNothingWritten(service.owner, siteId, async () => {
        expect((await technician.post('/removals', aRemoval(spot))).status).toBe(500)
      })
    } finally {
      await service.owner.query('drop function break_here() cascade')
    }
    await technician.post('/removals', aRemoval(spot)).expect(201)
  })

  it('leaves the position free for another bearing, in the same moment too', async () => {
    const spot = await aMountedSpot()
    await technician.post('/removals', aRemoval(spot)).expect(201)
    const next = { positionId: spot.positionId, mountedAt: daysOn(service.alpha, 85), meterShowsHours: 2600 }
    await technician.post('/mount-records', aMount(service.alpha, next)).expect(201)
    expect(await fitmentsOf(spot)).toHaveLength(2)
  })
})

describe('correcting a removal', () => {
  function correct(id: string, over: Record<string, unknown> = {}) {
    const told = { endKind: 'not-failed', observer: 'Bo Lund', evidence: 'Looked at again: sound' }
    return technician.post(`/removals/${id}/corrections`, {
      id: randomUUID(),
      correctionReason: 'Looked again',
      ...told,
      ...over,
    })
  }

  it('adds a record that the stay names from now on; time and hours stay', async () => {
    const spot = await aMountedSpot()
    const first = (await technician.post('/removals', aRemoval(spot)).expect(201)).body
    const reply = await correct(first.id).expect(201)
    const { fitmentId, positionId, removedAt, runHours } = first
    expect(reply.body).toMatchObject({
      fitmentId,
      positionId,
      removedAt,
      runHours,
      endKind: 'not-failed',
      modeClause: null,
      observer: 'Bo Lund',
      correctsId: first.id,
      correctionReason: 'Looked again',
    })
    expect((await technician.get(`/removals/${first.id}`)).body).toEqual(first)
    expect(await fitmentsOf(spot)).toMatchObject([{ removal_id: reply.body.id, run_hours: 100, hours_source: 'meter' }])
    const list = await technician.get(`/removals?positionId=${spot.positionId}`).expect(200)
    expect(list.body.items.map((item: { id: string }) => item.id)).toEqual([reply.body.id])
  })

  it('goes on from the latest record, is held to the same rules, and is made once', async () => {
    const first = (await technician.post('/removals', aRemoval(await aMountedSpot())).expect(201)).body
    const id = randomUUID()
    const replies = await Promise.all([correct(first.id, { id }), correct(first.id, { id })])
    expect(replies.map((reply) => reply.status)).toEqual([201, 201])
    await expectNothingWritten(service.owner, siteId, async () => {
      await expectRefused(correct(first.id), 409, 'already-corrected', 'id')
      await expectRefused(correct(id, { modeClause: '5.1.2' }), 422, 'not-allowed-here', 'modeClause')
      await expectRefused(correct(randomUUID()), 404, 'not-found', 'id')
    })
    const stranger = await service.signIn(service.beta.people.engineer, 'beta')
    await stranger.get(`/removals/${first.id}`).expect(404)
  })
})

describe('the list of removals', () => {
  it('is filtered by end and by mode, a mode with those below it', async () => {
    const bearing = aBearing(service.alpha)
    const spot = await aMountedSpot({ bearing })
    const first = aRemoval(spot)
    await technician.post('/removals', first).expect(201)
    const again = { positionId: spot.positionId, bearing, mountedAt: daysOn(service.alpha, 86), meterShowsHours: 2610 }
    await technician.post('/mount-records', aMount(service.alpha, again)).expect(201)
    const second = aRemoval(spot, {
      removedAt: daysOn(service.alpha, 88),
      endKind: 'not-failed',
      modeClause: null,
      meterShowsHours: 2640,
    })
    await technician.post('/removals', second).expect(201)
    const list = async (query: string) => {
      const reply = await technician.get(`/removals?positionId=${spot.positionId}${query}`).expect(200)
      return reply.body.items.map((item: { id: string }) => item.id)
    }
    expect(await list('')).toEqual([second.id, first.id])
    expect(await list('&endKind=failed')).toEqual([first.id])
    expect(await list('&modeClause=5.1')).toEqual([first.id])
    expect(await list('&modeClause=5.1.2')).toEqual([first.id])
    expect(await list('&modeClause=5.2')).toEqual([])
    const { body } = await technician.get(`/removals?positionId=${spot.positionId}&limit=1`).expect(200)
    // the bearing ran 100 h in its first stay and 30 h in this one
    expect(body.items).toMatchObject([
      { tag: spot.tag, designation: '22220 K/C3', lifeHours: 130, hoursSource: 'meter' },
    ])
    expect(await list(`&limit=1&cursor=${body.nextCursor}`)).toEqual([first.id])
  })
})
