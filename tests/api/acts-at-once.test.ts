import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openDatabase, type Database, type Sql } from '../../apps/api/src/db/database.ts'
import { refreshPositions } from '../../apps/api/src/bookkeeping/refresh.ts'
import { aPosition } from '../../seeds/builders/position-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aMount, ask, aSpot, day, daysOn, insert, plannedRemoval, type Spot } from './shaft-work.ts'

const service = useTestApp({ poolSize: 8 })
let technician: SiteAgent
let engineer: SiteAgent
let siteId: string
let db: Database
/** The service's clock stands 500 days after the meter of each spot was read. */
const today = 500
beforeAll(async () => {
  service.setNow(new Date(service.alpha.meterRead.at.getTime() + today * day))
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
  siteId = service.alpha.siteId
  const onError = (error: Error): never => {
    throw error
  }
  db = openDatabase({ appUrl: service.database.appUrl, poolSize: 4, onError })
})
afterAll(() => db.close())

async function flagKinds(query: string): Promise<string[]> {
  const reply = await technician.get(`/flags?${query}`).expect(200)
  return reply.body.items.map((flag: { kind: string }) => flag.kind)
}

/** Resolves once somebody waits for a row that another transaction holds. */
async function somebodyWaits(): Promise<void> {
  const text = `select from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock'`
  while ((await service.owner.query(text)).rowCount === 0) await new Promise((resolve) => setTimeout(resolve, 10))
}

async function aMountedSpot(): Promise<Spot> {
  const spot = await aSpot(service)
  const fill = { greaseId: service.alpha.greaseId, greaseBearingG: 160, meterShowsHours: 1000 }
  const mount = aMount(service.alpha, { positionId: spot.positionId, mountedAt: daysOn(service.alpha, 0), ...fill })
  await technician.post('/mount-records', mount).expect(201)
  return spot
}

describe('bookkeeping and a greasing at once', () => {
  it('leave the due date and the flags of the greasing, whichever began first', async () => {
    const spot = await aMountedSpot()
    expect(await flagKinds(`positionId=${spot.positionId}`)).toEqual(['greasing-overdue'])
    const greasedAt = daysOn(service.alpha, today - 1)
    const body = { id: randomUUID(), positionId: spot.positionId, greasedAt, doseG: 42 }
    let greasing: Promise<unknown> | undefined
    await db.withSite({ siteId, personId: null }, async (tx) => {
      // the greasing comes in after the facts were read and before the due date is written
      const sql: Sql = async (text, values) => {
        const rows = await tx.sql(text, values)
        if (text.includes('as plan_id')) {
          greasing = Promise.resolve(technician.post('/greasings', body).expect(201))
          await Promise.race([greasing, somebodyWaits()])
        }
        return rows as never
      }
      await refreshPositions(
        { scope: tx.scope, sql },
        [spot.positionId],
        new Date(daysOn(service.alpha, today)),
        'turn',
      )
    })
    await greasing
    expect(await flagKinds(`positionId=${spot.positionId}`)).toEqual([])
    const due = await ask<{ state: string }>(service.owner, siteId, 'select state from grease_due where id = $1', [
      spot.planId,
    ])
    expect(due).toEqual([{ state: 'not-due' }])
  })
})

describe('two changes of one shaft at once', () => {
  it('that make both positions locating raise the flag', async () => {
    for (let round = 0; round < 8; round++) {
      const spot = await aSpot(service, { position: { locating: false } })
      const [place] = await ask<{ shaft_id: string }>(
        service.owner,
        siteId,
        'select shaft_id from position where id = $1',
        [spot.positionId],
      )
      const { bearingTypeId } = service.alpha
      const twin = aPosition({ siteId, shaftId: place?.shaft_id ?? '', bearingTypeId, locating: false })
      await insert(service.owner, siteId, 'position', [twin])
      const ids = [spot.positionId, twin.id]
      const replies = await Promise.all(ids.map((id) => engineer.patch(`/positions/${id}`, { locating: true }, 1)))
      expect(replies.map((reply) => reply.status)).toEqual([200, 200])
      const flags = await ask(
        service.owner,
        siteId,
        'select kind from flag where shaft_id = $1 and cleared_at is null',
        [place?.shaft_id],
      )
      expect(flags).toEqual([{ kind: 'several-locating' }])
    }
  })
})

describe('a mount and the retiring of its position at once', () => {
  it('never leave a bearing in a retired position', async () => {
    for (let round = 0; round < 8; round++) {
      const spot = await aSpot(service)
      const mount = aMount(service.alpha, { positionId: spot.positionId })
      const retiredAt = daysOn(service.alpha, today)
      const [mounted, retired] = await Promise.all([
        technician.post('/mount-records', mount),
        engineer.patch(`/positions/${spot.positionId}`, { retiredAt }, 1),
      ])
      expect([mounted.status, retired.status]).toEqual(mounted.status === 201 ? [201, 422] : [422, 200])
    }
  })
})

describe('two acts at one position at once', () => {
  it('let one of two removals, and one of two mounts, through', async () => {
    const spot = await aMountedSpot()
    const removal = () => ({
      id: randomUUID(),
      positionId: spot.positionId,
      removedAt: daysOn(service.alpha, 90),
      meterShowsHours: 2600,
      ...plannedRemoval,
    })
    const removals = await Promise.all([removal(), removal()].map((body) => technician.post('/removals', body)))
    expect(removals.map((reply) => reply.status)).toEqual(expect.arrayContaining([201, 422]))
    const mounts = await Promise.all(
      [0, 1].map(() => {
        const at = { mountedAt: daysOn(service.alpha, 95), meterShowsHours: 2700 }
        return technician.post('/mount-records', aMount(service.alpha, { positionId: spot.positionId, ...at }))
      }),
    )
    expect(mounts.map((reply) => reply.status)).toEqual(expect.arrayContaining([201, 409]))
  })
})
