import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openDatabase, type Database } from '../../apps/api/src/db/database.ts'
import { turnOfDay } from '../../apps/api/src/jobs/turn-of-day.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aMount, ask, aSpot, day, daysOn, type Spot } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let engineer: SiteAgent
let manager: SiteAgent
let db: Database
let spot: Spot

/** The machine runs 10 h a day, the plan asks every 2000 h: due on day 200, overdue after day 220, missed after day 300. */
beforeAll(async () => {
  const { people, greaseId } = service.alpha
  db = openDatabase({
    appUrl: service.database.appUrl,
    poolSize: 2,
    onError: (error) => {
      throw error
    },
  })
  service.setNow(at(1))
  technician = await service.signIn(people.technician, 'alpha')
  engineer = await service.signIn(people.engineer, 'alpha')
  manager = await service.signIn(people.manager, 'alpha')
  spot = await aSpot(service, { machine: { hoursPerDay: 10 } })
  const fill = { greaseId, greaseBearingG: 160, meterShowsHours: 1000 }
  const mount = aMount(service.alpha, { positionId: spot.positionId, mountedAt: daysOn(service.alpha, 0), ...fill })
  await technician.post('/mount-records', mount).expect(201)
})
afterAll(() => db.close())

function at(days: number): Date {
  return new Date(service.alpha.meterRead.at.getTime() + days * day)
}

async function turnTo(days: number): Promise<number> {
  service.setNow(at(days))
  return await turnOfDay(db, at(days))
}

async function state(): Promise<string> {
  const reply = await technician.get(`/positions/${spot.positionId}/overview`).expect(200)
  return reply.body.due.state
}

async function openKinds(): Promise<string[]> {
  const reply = await technician.get(`/flags?positionId=${spot.positionId}`).expect(200)
  return reply.body.items.map((flag: { kind: string }) => flag.kind)
}

describe('turnOfDay(db, now)', () => {
  it('changes nothing on a day on which nothing turns', async () => {
    expect(await turnTo(100)).toBe(0)
    expect(await state()).toBe('not-due')
  })

  it('makes a greasing due soon, then due, without a flag', async () => {
    expect(await turnTo(185)).toBe(1)
    expect(await state()).toBe('due-soon')
    expect(await turnTo(210)).toBe(1)
    expect(await state()).toBe('due')
    expect(await openKinds()).toEqual([])
  })

  it('raises the flag on the day on which the window is over', async () => {
    expect(await turnTo(222)).toBe(1)
    expect(await state()).toBe('overdue')
    expect(await openKinds()).toEqual(['greasing-overdue'])
  })

  it('does nothing the second time on the same day', async () => {
    expect(await turnTo(222)).toBe(0)
  })

  it('brings back a flag whose putting off is over', async () => {
    const [flag] = (await engineer.get(`/flags?positionId=${spot.positionId}`)).body.items
    const until = at(230).toISOString().slice(0, 10)
    await engineer
      .postIfMatch(`/flags/${flag.id}/put-off`, { until, reason: 'The gun is being calibrated' }, flag.version)
      .expect(200)
    expect(await openKinds()).toEqual([])
    await turnTo(232)
    const [back] = (await engineer.get(`/flags?positionId=${spot.positionId}`)).body.items
    expect(back).toMatchObject({ id: flag.id, putOffUntil: null, putOffReason: null })
  })

  it('works out every due date again after the settings of the site changed', async () => {
    const site = (await manager.get('')).body
    await manager.patch('', { settings: { ...site.settings, greasingWindowPercent: 20 } }).expect(200)
    expect(await state()).toBe('overdue')
    expect(await turnTo(233)).toBe(1)
    expect(await state()).toBe('due')
    expect(await openKinds()).toEqual([])
    expect(await turnTo(233)).toBe(0)
  })

  it('calls it missed beyond half an interval', async () => {
    await turnTo(302)
    expect(await state()).toBe('missed')
    expect(await openKinds()).toEqual(['greasing-overdue'])
  })

  it('turns at the other sites too where it fails at one, and tells of the failure', async () => {
    await service.owner.query(`
      create function break_here() returns trigger language plpgsql as $$ begin raise exception 'broken on purpose'; end $$;
      create trigger zz_break_here before update on flag for each row
        when (new.site_id = '${service.beta.siteId}') execute function break_here()`)
    try {
      for (const siteId of [service.alpha.siteId, service.beta.siteId]) await putOffAFlag(siteId)
      await expect(turnOfDay(db, at(310))).rejects.toThrow('did not turn at 1 site')
      expect(await putOffFlags(service.alpha.siteId)).toBe(0)
      expect(await putOffFlags(service.beta.siteId)).toBe(1)
    } finally {
      await service.owner.query('drop function break_here() cascade')
    }
  })
})

async function putOffAFlag(siteId: string): Promise<void> {
  const text = `insert into flag (site_id, id, kind, subject_id, area_id, since, urgency, put_off_until, put_off_reason)
    select site_id, gen_random_uuid(), 'no-locating', gen_random_uuid(), id, now(), 640, '2000-01-01', 'Waits for parts' from area limit 1`
  await ask(service.owner, siteId, text)
}

async function putOffFlags(siteId: string): Promise<number> {
  return (await ask(service.owner, siteId, 'select id from flag where put_off_until is not null')).length
}
