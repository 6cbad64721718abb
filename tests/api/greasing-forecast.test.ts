import { v7 as newId } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import { aGrease } from '../../seeds/builders/catalogue-rows.ts'
import { aMeter, aMeterReading, anArea } from '../../seeds/builders/site-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { countStatements } from '../support/statements.ts'
import { ask, aSpot, expectRefused, insert, type Spot } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let manager: SiteAgent
/** A Wednesday; its week began on 2026-11-23. */
const today = '2026-11-25'
const otherArea = newId()
const otherGrease = newId()

interface Work {
  readonly doseG: number
  readonly intervalHours: number
  readonly calendarMonths: number
  readonly hoursPerDay: number
  readonly dueOn: string
  readonly elsewhere: boolean
}

const dues = [
  '2026-09-30',
  '2026-11-24',
  '2026-11-25',
  '2026-11-29',
  '2026-11-30',
  '2027-01-31',
  '2027-02-21',
  '2027-03-01',
]
/** Every due day with a slow and a fast machine, one that stands, and months that end sooner than the hours. */
const works: Work[] = dues.flatMap((dueOn, index) => [
  { doseG: 10 + index, intervalHours: 200, calendarMonths: 12, hoursPerDay: 24, dueOn, elsewhere: index % 2 === 0 },
  { doseG: 31.5, intervalHours: 1500, calendarMonths: 1, hoursPerDay: 7.3, dueOn, elsewhere: false },
  { doseG: 42, intervalHours: 500, calendarMonths: 60, hoursPerDay: 0, dueOn, elsewhere: index % 3 === 0 },
])

beforeAll(async () => {
  const { alpha, owner } = service
  const { siteId } = alpha
  service.setNow(new Date(`${today}T10:00:00Z`))
  await ask(owner, siteId, `update site set time_zone = 'Europe/Berlin' where id = '${siteId}'`)
  await insert(owner, siteId, 'area', [anArea({ siteId, id: otherArea, code: 'SIL', name: 'Silo' })])
  await insert(owner, siteId, 'grease', [aGrease({ siteId, id: otherGrease, name: 'Sedge PU 2' })])
  for (const work of works) await addDue(work)
  const { locating, ...beta } = service.beta
  await addDueRow({ planId: locating.planId, positionId: locating.id }, beta.areaId, today, true, beta)
  technician = await service.signIn(alpha.people.technician, 'alpha')
  manager = await service.signIn(alpha.people.manager, 'alpha')
})

async function addDue(work: Work): Promise<void> {
  const { alpha, owner } = service
  const areaId = work.elsewhere ? otherArea : alpha.areaId
  const spot = await aSpot(service, { machine: { hoursPerDay: work.hoursPerDay, areaId }, meter: false })
  const greaseId = work.elsewhere ? otherGrease : alpha.greaseId
  await ask(
    owner,
    alpha.siteId,
    'update grease_plan set grease_id = $2, dose_g = $3, interval_hours = $4, calendar_months = $5 where id = $1',
    [spot.planId, greaseId, work.doseG, work.intervalHours, work.calendarMonths],
  )
  await addDueRow(spot, areaId, work.dueOn, work.hoursPerDay > 10)
}

async function addDueRow(
  spot: Pick<Spot, 'planId' | 'positionId'>,
  areaId: string,
  dueOn: string,
  estimated: boolean,
  { siteId }: { siteId: string } = service.alpha,
): Promise<void> {
  await ask(
    service.owner,
    siteId,
    `insert into grease_due (site_id, id, position_id, area_id, due_on, due_by, estimated, due_soon_on, overdue_on, missed_on, state)
     values ($1, $2, $3, $4, $5, 'hours', $6, $5, $5, $5, 'not-due')`,
    [siteId, spot.planId, spot.positionId, areaId, dueOn, estimated],
  )
}

interface Bucket {
  stops: number
  waiting: number
  grams: Record<string, number>
}

const dayMs = 86_400_000
const text = (ms: number): string => new Date(ms).toISOString().slice(0, 10)

/** The same question worked out day by day, each work on its own. */
function walkedThrough(of: readonly Work[], weeks: number): Bucket[] {
  const monday = Date.parse('2026-11-23')
  const buckets = Array.from({ length: weeks }, (): Bucket => ({ stops: 0, waiting: 0, grams: {} }))
  for (const work of of) {
    let nextOn = work.dueOn < today ? today : work.dueOn
    for (let ms = Date.parse(today); ms < monday + weeks * 7 * dayMs; ms += dayMs) {
      if (text(ms) !== nextOn) continue
      const bucket = buckets[Math.floor((ms - monday) / (7 * dayMs))] as Bucket
      const grease = work.elsewhere ? otherGrease : service.alpha.greaseId
      bucket.stops += 1
      if (work.dueOn < today && nextOn === today) bucket.waiting += 1
      bucket.grams[grease] = (bucket.grams[grease] ?? 0) + work.doseG
      nextOn = after(nextOn, work)
    }
  }
  return buckets
}

/** The day of the next greasing: the day on which the hours are full, or the day of the month, the earlier. */
function after(day: string, { intervalHours, calendarMonths, hoursPerDay }: Work): string {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number]
  const lastOfMonth = new Date(Date.UTC(year, month - 1 + calendarMonths + 1, 0)).getUTCDate()
  const byMonths = Date.UTC(year, month - 1 + calendarMonths, Math.min(date, lastOfMonth))
  const days = Array.from({ length: 3000 }, (_, index) => index + 1).find((n) => n * hoursPerDay >= intervalHours)
  const byHours = days === undefined ? Infinity : Date.parse(day) + days * dayMs
  return text(Math.min(byMonths, byHours))
}

function buckets(body: { weeks: { stops: number; waiting: number; grams: { greaseId: string; grams: number }[] }[] }) {
  return body.weeks.map(({ stops, waiting, grams }) => ({
    stops,
    waiting,
    grams: Object.fromEntries(grams.map(({ greaseId, grams: amount }) => [greaseId, amount])),
  }))
}

describe('the forecast of greasing', () => {
  it.each([4, 8, 13])('of %d weeks is what walking through them day by day comes to', async (weeks) => {
    const { body } = await technician.get(`/greasing-forecast?weeks=${weeks}`).expect(200)
    expect(buckets(body)).toEqual(walkedThrough(works, weeks))
    expect(body.weeks[0]).toMatchObject({ startsOn: '2026-11-23', endsOn: '2026-11-29' })
    expect(body.weeks.at(-1).endsOn).toBe(text(Date.parse('2026-11-22') + weeks * 7 * dayMs))
  })

  it('counts a place of the other area only where it is not left out by the filter', async () => {
    const { body } = await technician.get(`/greasing-forecast?weeks=13&areaId=${otherArea}`).expect(200)
    expect(buckets(body)).toEqual(
      walkedThrough(
        works.filter(({ elsewhere }) => elsewhere),
        13,
      ),
    )
    expect(body.greases.map((grease: { name: string }) => grease.name)).toEqual(['Sedge PU 2'])
  })

  it('takes ten minutes a stop and says that it is assumed, until the site says another number', async () => {
    const assumed = (await technician.get('/greasing-forecast').expect(200)).body
    expect(assumed).toMatchObject({ minutesPerStop: 10, minutesAssumed: true })
    expect(assumed.weeks[0].hours).toBeCloseTo(assumed.weeks[0].stops / 6, 9)
    await manager.patch('', { settings: { minutesPerStop: 15 } }).expect(200)
    const said = (await technician.get('/greasing-forecast').expect(200)).body
    expect(said).toMatchObject({ minutesPerStop: 15, minutesAssumed: false })
    expect(said.weeks[0].hours).toBeCloseTo(said.weeks[0].stops / 4, 9)
  })

  it('goes by the hours that the meter shows where it was read often enough', async () => {
    const { alpha, owner } = service
    const { siteId } = alpha
    const before = (await technician.get('/greasing-forecast?weeks=4').expect(200)).body.weeks
    const spot = await aSpot(service, { machine: { hoursPerDay: 1 }, meter: false })
    const [first, last] = [new Date('2026-11-14T08:00Z'), new Date('2026-11-24T08:00Z')]
    const meter = aMeter({ siteId, machineId: spot.machineId, lastReadAt: last, lastTotalHours: 1240 })
    const read = { siteId, meterId: meter.id, readBy: alpha.people.technician.id }
    await insert(owner, siteId, 'meter', [meter])
    await insert(owner, siteId, 'meter_reading', [
      aMeterReading({ ...read, readAt: first, shownHours: 1000 }),
      aMeterReading({ ...read, readAt: last, shownHours: 1240 }),
    ])
    await addDueRow(spot, alpha.areaId, today, true)
    await ask(owner, siteId, `update grease_plan set interval_hours = 168 where id = '${spot.planId}'`)
    const { weeks } = (await technician.get('/greasing-forecast?weeks=4').expect(200)).body
    // 24 h a day: every seventh day, one more stop in each of the four weeks
    const more = weeks.map(({ stops }: { stops: number }, index: number) => stops - before[index].stops)
    expect(more).toEqual([1, 1, 1, 1])
  })

  it('refuses a number of weeks that it does not offer', async () => {
    await expectRefused(technician.get('/greasing-forecast?weeks=5'), 400, 'request-invalid', 'weeks')
  })

  it('asks the same number of statements for four weeks and for thirteen', async () => {
    const few = await countStatements(() => technician.get('/greasing-forecast?weeks=4').expect(200))
    const many = await countStatements(() => technician.get('/greasing-forecast?weeks=13').expect(200))
    expect(many).toBe(few)
    expect(many).toBeLessThanOrEqual(7)
  })
})
