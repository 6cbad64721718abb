import { greasingCompliance } from '@shaftbook/bearing/compliance'
import { v7 as newId } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import { anArea } from '../../seeds/builders/site-rows.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { countStatements } from '../support/statements.ts'
import { aRound } from './round-work.ts'
import { ask, aSpot, expectRefused, insert, type Spot } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
let engineer: SiteAgent
const today = '2026-11-25'
const otherArea = newId()
let spots: Spot[]
let alone: Spot

interface Done {
  readonly spot: number
  readonly day: string
  readonly result: string
  readonly person: 'technician' | 'engineer'
  readonly doseG: number
}

const results = ['met', 'met', 'met', 'early', 'late', 'wrong-amount', 'no-window']
/** Twenty greasings at each of four positions, every 18th day; who and how turns round with other steps. */
const doneOnes: Done[] = [0, 1, 2, 3].flatMap((spot) =>
  Array.from({ length: 20 }, (_, n): Done => {
    const at = Date.parse('2025-11-28') + (n * 18 + spot) * 86_400_000
    const index = n * 4 + spot
    return {
      spot,
      day: new Date(at).toISOString().slice(0, 10),
      result: results[index % results.length] as string,
      person: index % 3 === 0 ? 'engineer' : 'technician',
      doseG: [42, 63, 63.1, 84, 84.1][index % 5] as number,
    }
  }),
)

beforeAll(async () => {
  const { alpha, owner } = service
  const { siteId } = alpha
  service.setNow(new Date(`${today}T10:00:00Z`))
  await ask(owner, siteId, `update site set time_zone = 'Pacific/Auckland' where id = '${siteId}'`)
  await insert(owner, siteId, 'area', [anArea({ siteId, id: otherArea, code: 'SIL', name: 'Silo' })])
  spots = []
  for (const spot of [0, 1, 2, 3]) {
    const areaId = spot === 3 ? otherArea : alpha.areaId
    spots.push(await aSpot(service, { machine: { areaId, hoursPerDay: 10 }, meter: false }))
  }
  for (const done of doneOnes) await addDone(spots[done.spot] as Spot, done)
  alone = await aSpot(service, { machine: { hoursPerDay: 10 }, meter: false })
  technician = await service.signIn(alpha.people.technician, 'alpha')
  engineer = await service.signIn(alpha.people.engineer, 'alpha')
})

/** A signed greasing at noon of the plant, 13 hours ahead of UTC in its summer. */
async function addDone(
  spot: Spot,
  { day, result, person, doseG }: Omit<Done, 'spot'>,
  over: { id?: string; beforeId?: string; correctsId?: string; withdrawn?: boolean; at?: string } = {},
): Promise<string> {
  const { alpha, owner } = service
  const id = over.id ?? newId()
  const at = over.at ?? `${day}T00:30:00Z`
  await ask(
    owner,
    alpha.siteId,
    `insert into greasing (site_id, id, position_id, plan_id, kind, greased_at, grease_id, dose_g, planned_dose_g, signed_by,
       corrects_id, correction_reason, withdrawn)
     values ($1, $2, $3, $4, 'regreasing', $5, $6, $7, 42, $8, $9, $10, $11)`,
    [
      alpha.siteId,
      id,
      spot.positionId,
      spot.planId,
      at,
      alpha.greaseId,
      doseG,
      alpha.people[person].id,
      over.correctsId ?? null,
      over.correctsId ? 'Written down wrong' : null,
      over.withdrawn ?? false,
    ],
  )
  await ask(
    owner,
    alpha.siteId,
    `insert into greasing_window (site_id, id, position_id, greased_at, window_result, before_id, worked_out_at)
     values ($1, $2, $3, $4, $5, $6, $4)`,
    [alpha.siteId, id, spot.positionId, at, result, over.beforeId ?? null],
  )
  return id
}

interface Tally {
  met: number
  early: number
  late: number
  missed: number
  wrongAmount: number
  notDone: number
  windowsDue: number
  percent: number | null
}

/** The same counted one by one, in plain words of the rule. */
function counted(of: readonly Done[]): Tally {
  const tally = { met: 0, early: 0, late: 0, missed: 0, wrongAmount: 0, notDone: 0, windowsDue: 0 }
  for (const { result } of of) {
    if (result === 'met') tally.met += 1
    if (result === 'early') tally.early += 1
    if (result === 'late') tally.late += 1
    if (result === 'wrong-amount') tally.wrongAmount += 1
    if (['met', 'late', 'wrong-amount'].includes(result)) tally.windowsDue += 1
  }
  return { ...tally, percent: tally.windowsDue === 0 ? null : (tally.met / tally.windowsDue) * 100 }
}

function byKey(of: readonly Done[], key: (done: Done) => string): Record<string, Tally> {
  const keys = [...new Set(of.filter(({ result }) => result !== 'no-window').map(key))]
  return Object.fromEntries(keys.map((each) => [each, counted(of.filter((done) => key(done) === each))]))
}

const close = (tally: Tally): Tally => ({
  ...tally,
  percent: tally.percent === null ? null : Math.round(tally.percent * 1e6) / 1e6,
})
const tallies = <Row extends Tally>(rows: readonly Row[], key: (row: Row) => string): Record<string, Tally> =>
  Object.fromEntries(
    rows.map((row) => {
      const { met, early, late, missed, wrongAmount, notDone, windowsDue, percent } = row
      return [key(row), close({ met, early, late, missed, wrongAmount, notDone, windowsDue, percent })]
    }),
  )
const rounded = (of: Record<string, Tally>) =>
  Object.fromEntries(Object.entries(of).map(([key, one]) => [key, close(one)]))

const whole = '/greasing-compliance?from=2025-11-01&to=2026-11-25'

describe('compliance', () => {
  it('by month is what counting the greasings one by one comes to', async () => {
    const { body } = await technician.get(whole).expect(200)
    expect(tallies(body.months, ({ month }: { month: string } & Tally) => month.slice(0, 7))).toEqual(
      rounded(byKey(doneOnes, ({ day }) => day.slice(0, 7))),
    )
    expect(tallies([body.total], () => 'all')).toEqual(rounded({ all: counted(doneOnes) }))
  })

  it.each([
    ['position', ({ spot }: Done) => (spots[spot] as Spot).tag],
    ['area', ({ spot }: Done) => (spot === 3 ? 'Silo' : 'Gallery')],
    ['person', ({ person }: Done) => `${person} of alpha`],
  ])('by %s is what counting them one by one comes to', async (by, key) => {
    const { body } = await technician.get(`${whole}&by=${by}`).expect(200)
    expect(tallies(body.groups, ({ name }: { name: string } & Tally) => name)).toEqual(rounded(byKey(doneOnes, key)))
    expect(body.groupsInAll).toBe(body.groups.length)
  })

  it('by round counts the stops of each round, one on two rounds for both, and the rest apart', async () => {
    const positionOf = (spot: number): string => (spots[spot] as Spot).positionId
    const [one, two] = [aRound([positionOf(0), positionOf(1)]), aRound([positionOf(1)])]
    for (const round of [one, two]) await engineer.post('/rounds', round).expect(201)
    const { body } = await technician.get(`${whole}&by=round`).expect(200)
    const of = (numbers: number[]): Tally => counted(doneOnes.filter(({ spot }) => numbers.includes(spot)))
    expect(tallies(body.groups, ({ name }: { name: string | null } & Tally) => name ?? 'null')).toEqual(
      rounded({ [one.name]: of([0, 1]), [two.name]: of([1]), null: of([2, 3]) }),
    )
    expect(tallies([body.total], () => 'all')).toEqual(rounded({ all: counted(doneOnes) }))
    const chosen = await technician.get(`${whole}&roundId=${two.id}`).expect(200)
    expect(tallies([chosen.body.total], () => 'all')).toEqual(rounded({ all: of([1]) }))
  })

  it('is of the chosen period, area, position and person only', async () => {
    const inPart = doneOnes.filter(
      ({ day, spot, person }) => day >= '2026-03-04' && day <= '2026-07-19' && spot === 1 && person === 'technician',
    )
    const { positionId } = spots[1] as Spot
    const { areaId, people } = service.alpha
    const { body } = await technician
      .get(
        `/greasing-compliance?from=2026-03-04&to=2026-07-19&positionId=${positionId}&areaId=${areaId}&personId=${people.technician.id}`,
      )
      .expect(200)
    expect(inPart.length).toBeGreaterThan(3)
    expect(tallies([body.total], () => 'all')).toEqual(rounded({ all: counted(inPart) }))
    const elsewhere = await technician.get(`${whole}&positionId=${positionId}&areaId=${otherArea}`).expect(200)
    expect(elsewhere.body.total).toMatchObject({ windowsDue: 0, percent: null })
    expect(elsewhere.body.months).toEqual([])
  })

  it('counts a day by the clock of the plant', async () => {
    // 11:30 UTC on the last day of July is half an hour to midnight in Auckland, 12:30 UTC is August there
    const last = await addDone(
      alone,
      { day: '', result: 'met', person: 'engineer', doseG: 42 },
      { at: '2026-07-31T11:30:00Z' },
    )
    const first = await addDone(
      alone,
      { day: '', result: 'met', person: 'engineer', doseG: 42 },
      { at: '2026-07-31T12:30:00Z' },
    )
    const { body } = await technician.get(`${whole}&positionId=${alone.positionId}`).expect(200)
    expect(body.months.map(({ month, met }: { month: string; met: number }) => [month, met])).toEqual([
      ['2026-07-01', 1],
      ['2026-08-01', 1],
    ])
    for (const correctsId of [last, first]) {
      await addDone(
        alone,
        { day: '', result: 'no-window', person: 'engineer', doseG: 42 },
        { correctsId, withdrawn: true, at: '2026-07-31T12:30:00Z' },
      )
    }
    const withdrawn = await technician.get(`${whole}&positionId=${alone.positionId}`).expect(200)
    expect(withdrawn.body.total.windowsDue).toBe(0)
  })

  it('lists doses of more than one and a half times the planned one, newest first', async () => {
    const over = doneOnes.filter(({ doseG }) => doseG > 63).toSorted((a, b) => (a.day < b.day ? 1 : -1))
    const { body } = await technician.get(whole).expect(200)
    expect(body.overdosedInAll).toBe(over.length)
    const got = body.overdosed.map(({ doseG, verdict }: { doseG: number; verdict: string }) => [doseG, verdict])
    const byDose = (a: [number, string], b: [number, string]): number => a[0] - b[0]
    const wanted = over.map(({ doseG }): [number, string] => [doseG, doseG > 84 ? 'far-over' : 'over'])
    expect(got.toSorted(byDose)).toEqual(wanted.toSorted(byDose))
    const times = body.overdosed.map(({ greasedAt }: { greasedAt: string }) => greasedAt)
    expect(times).toEqual(times.toSorted().toReversed())
  })

  it('refuses a period that ends before it begins, or is longer than three years', async () => {
    await expectRefused(
      technician.get('/greasing-compliance?from=2026-02-01&to=2026-01-31'),
      400,
      'request-invalid',
      'to',
    )
    await expectRefused(
      technician.get('/greasing-compliance?from=2020-01-01&to=2026-01-31'),
      400,
      'request-invalid',
      'from',
    )
  })

  it('asks the same number of statements for a year and for a month', async () => {
    const year = await countStatements(() => technician.get(whole).expect(200))
    const month = await countStatements(() =>
      technician.get('/greasing-compliance?from=2026-05-01&to=2026-05-31').expect(200),
    )
    expect(month).toBe(year)
    expect(year).toBeLessThanOrEqual(6)
  })
})

describe('intervals that passed with no greasing', () => {
  /** 100 days at 10 h a day; nobody comes for 435 days, then somebody does. */
  const plan = { intervalHours: 1000, calendarMonths: 12 }
  const rule = (days: readonly string[], until: string) =>
    greasingCompliance(
      { intervalHours: plan.intervalHours, calendarMonths: plan.calendarMonths },
      days.map((date) => ({ date, runHours: null, givenG: 42, plannedG: 42 })),
      { today: until, runHours: null, hoursPerDay: 10 },
    )

  async function aPlannedSpot(): Promise<Spot> {
    const spot = await aSpot(service, { machine: { hoursPerDay: 10 }, meter: false })
    await ask(
      service.owner,
      service.alpha.siteId,
      'update grease_plan set interval_hours = $2, calendar_months = $3 where id = $1',
      [spot.planId, plan.intervalHours, plan.calendarMonths],
    )
    return spot
  }

  it('before a greasing that came far too late count as missed on the days on which they ended', async () => {
    const spot = await aPlannedSpot()
    const person = 'technician'
    const beforeId = await addDone(spot, { day: '2025-09-01', result: 'no-window', person, doseG: 42 })
    await addDone(spot, { day: '2026-11-10', result: 'missed', person, doseG: 42 }, { beforeId })
    const at = `&positionId=${spot.positionId}`
    const { body } = await technician.get(`/greasing-compliance?from=2025-09-01&to=2026-11-25${at}`).expect(200)
    // 2025-09-01 + 100, 200 and 300 days; the fourth interval is the one that was greased too late
    expect(
      body.months.map(({ month, notDone, missed }: Tally & { month: string }) => [month, notDone, missed]),
    ).toEqual([
      ['2025-12-01', 1, 0],
      ['2026-03-01', 1, 0],
      ['2026-06-01', 1, 0],
      ['2026-11-01', 0, 1],
    ])
    expect(body.total.windowsDue).toBe(rule(['2025-09-01', '2026-11-10'], today).windowsDue)
    const early = await technician.get(`/greasing-compliance?from=2026-01-01&to=2026-04-30${at}`).expect(200)
    expect(early.body.total).toMatchObject({ notDone: 1, missed: 0, windowsDue: 1, percent: 0 })
    const byPerson = await technician.get(`/greasing-compliance?from=2025-09-01&by=person${at}`).expect(200)
    expect(
      byPerson.body.groups.map(({ name, windowsDue }: { name: string; windowsDue: number }) => [name, windowsDue]),
    ).toEqual([
      [null, 3],
      ['technician of alpha', 1],
    ])
  })

  it('where nobody has come yet count up to today, the first once its window is over', async () => {
    const spot = await aPlannedSpot()
    await addDone(spot, { day: '2026-03-01', result: 'no-window', person: 'technician', doseG: 42 })
    await ask(
      service.owner,
      service.alpha.siteId,
      `insert into grease_due (site_id, id, position_id, area_id, last_greased_at, due_on, due_by, estimated, due_soon_on, overdue_on,
         missed_on, state)
       values ($1, $2, $3, $4, '2026-03-01T00:30:00Z', '2026-06-09', 'hours', true, '2026-05-30', '2026-06-20', '2026-07-30', 'missed')`,
      [service.alpha.siteId, spot.planId, spot.positionId, service.alpha.areaId],
    )
    const { body } = await technician
      .get(`/greasing-compliance?from=2026-01-01&positionId=${spot.positionId}`)
      .expect(200)
    // 269 days: the windows of day 100 (over on day 111) and day 200
    expect(body.months.map(({ month, notDone }: Tally & { month: string }) => [month, notDone])).toEqual([
      ['2026-06-01', 1],
      ['2026-09-01', 1],
    ])
    expect(body.total.windowsDue).toBe(rule(['2026-03-01'], today).windowsDue)
  })
})
