import { aGreasePlan, aGreasing, type GreasePlanRow, type GreasingRow } from '../builders/position-rows.ts'
import type { GreaseChangeRow, ObservationRow } from '../builders/watch-rows.ts'
import type { Random } from '../random.ts'
import type { Book } from './book.ts'
import { registerDays, type Calendar } from './calendar.ts'
import type { Place, Plant } from './plant.ts'

/** What is done at a position otherwise than by gun, since how many days, and when it was done last. */
interface OtherWay {
  readonly tag: string
  readonly since: number
  /** Regreasing by gun ended when this began. */
  readonly instead: boolean
  readonly plan: Pick<GreasePlanRow, 'way' | 'task'> & Partial<GreasePlanRow>
  readonly doneDaysAgo: readonly number[]
}

export interface OtherWays {
  /** Plans that the engineer set by hand and wanted to look at again. */
  readonly byHand: readonly { readonly tag: string; readonly reviewDaysAgo: number; readonly reason: string }[]
  readonly ways: readonly OtherWay[]
  /** Temperatures (°C) and vibrations (mm/s) that were read on the rounds, oldest first, two weeks apart. */
  readonly observed: readonly {
    readonly tag: string
    readonly celsius: readonly number[]
    readonly mmS: readonly number[]
  }[]
  readonly changes: readonly {
    readonly tag: string
    readonly to: string
    readonly since: number
    readonly reason: string
  }[]
}

const turning = (tag: string, doneDaysAgo: readonly number[]): OtherWay => ({
  tag,
  since: 400,
  instead: false,
  plan: { way: null, task: 'turn-shaft', calendarDays: 14, reason: 'Stands by next to running elevators' },
  doneDaysAgo,
})
const sealed = (tag: string): OtherWay => ({
  tag,
  since: 30,
  instead: true,
  plan: { way: 'sealed', task: null, reason: 'Sealed on both sides and filled for life' },
  doneDaysAgo: [],
})
const lubricator = (tag: string, doneDaysAgo: readonly number[]): OtherWay => ({
  tag,
  since: 90,
  instead: true,
  plan: { way: 'automatic', task: 'refill', doseG: 120, calendarMonths: 6, reason: 'Out of reach while the belt runs' },
  doneDaysAgo,
})

/** Ways besides the gun, what was read on the rounds, and a change-over that is under way. */
export const harrowPointWays: OtherWays = {
  byHand: [{ tag: 'BG01-HD-A', reviewDaysAgo: 2, reason: 'Twice the interval on trial until the autumn' }],
  ways: [
    sealed('DR05-FN-A'),
    sealed('DR05-FN-B'),
    lubricator('RP03-HD-A', [90]),
    lubricator('RP03-HD-B', [89]),
    {
      tag: 'SL06-HD-A',
      since: 60,
      instead: true,
      plan: { way: 'central', task: 'check-system', calendarDays: 7, reason: 'Fed by the pump of the elevator' },
      doneDaysAgo: [24, 17, 10, 3],
    },
    {
      tag: 'DR06-HD-B',
      since: 200,
      instead: true,
      plan: {
        way: 'oil',
        task: 'check-oil',
        oil: 'Mineral oil, viscosity 220',
        calendarDays: 7,
        reason: 'Runs in an oil bath',
      },
      doneDaysAgo: [16, 9, 2],
    },
    {
      tag: 'DR06-HD-B',
      since: 200,
      instead: true,
      plan: {
        way: 'oil',
        task: 'change-oil',
        oil: 'Mineral oil, viscosity 220, 2 l',
        intervalHours: 8000,
        calendarMonths: 12,
      },
      doneDaysAgo: [199],
    },
    turning('ET06-HD-A', [32, 18, 4]),
    turning('ET06-HD-B', [32, 18, 4]),
    turning('ET06-BT-A', [33, 19]),
  ],
  observed: [
    { tag: 'AS01-FN-A', celsius: [54, 56, 53, 55, 57, 74], mmS: [2.1, 2, 2.2, 2.1, 2, 2.2] },
    { tag: 'AS02-FN-A', celsius: [52, 51, 53, 52, 54, 53], mmS: [1.6, 1.7, 1.6, 1.8, 1.7, 3.4] },
    { tag: 'AS03-FN-A', celsius: [49, 50, 51, 49, 50, 51], mmS: [1.4, 1.5, 1.4, 1.4, 1.5, 1.4] },
    { tag: 'DR02-FN-A', celsius: [61, 63, 60, 62, 64, 62], mmS: [] },
  ],
  changes: [
    { tag: 'CL02-DM-A', to: 'Marl HT 2', since: 12, reason: 'The drum runs hotter since the burner was changed' },
  ],
}
export const noOtherWays: OtherWays = { byHand: [], ways: [], observed: [], changes: [] }

interface Writing {
  siteId: string
  random: Random
  calendar: Calendar
  plant: Plant
  book: Book
  greases: Readonly<Record<string, { id: string; name: string }>>
  careful: string
  engineerId: string
}

export interface WrittenWays {
  plans: GreasePlanRow[]
  greasings: GreasingRow[]
  observations: ObservationRow[]
  changes: GreaseChangeRow[]
}

/** Writes down what a position gets besides or instead of grease by gun; rounds with the gun end where it is instead. */
export function writeOtherWays({ byHand, ways, observed, changes }: OtherWays, writing: Writing): WrittenWays {
  const places = new Map(
    writing.plant.machines
      .flatMap(({ shafts }) => shafts.flatMap((shaft) => shaft.places))
      .map((place) => [place.position.tag, place]),
  )
  const at = (tag: string): Place => {
    const place = places.get(tag)
    if (!place) throw new Error(`There is no position ${tag}.`)
    return place
  }
  const written: WrittenWays = { plans: [], greasings: [], observations: [], changes: [] }
  for (const { tag, reviewDaysAgo, reason } of byHand) {
    const reviewOn = writing.calendar.date(registerDays - reviewDaysAgo)
    Object.assign(at(tag).plan, { source: 'by-hand', reason, reviewOn, duty: {} })
  }
  for (const way of ways) writeWay(at(way.tag), way, writing, written)
  for (const { tag, celsius, mmS } of observed) {
    for (const [index, temperatureC] of celsius.entries()) {
      const observedAt = momentAgo(writing, 14 * (celsius.length - 1 - index) + 1)
      const id = writing.random.uuidAt(observedAt)
      const { siteId, careful: signedBy } = writing
      const seen = { reliefClosed: true, oldGreaseSeen: index % 3 === 0, zone: null, note: '', greasingId: null }
      const read = { temperatureC, vibrationMmS: mmS[index] ?? null, observedAt, signedAt: observedAt, signedBy }
      written.observations.push({ siteId, id, positionId: at(tag).position.id, ...read, ...seen })
    }
  }
  for (const change of changes) writeChange(at(change.tag), change, writing, written)
  return written
}

function writeWay(
  place: Place,
  { since, instead, plan, doneDaysAgo }: OtherWay,
  writing: Writing,
  written: WrittenWays,
): void {
  const { siteId, random, careful: signedBy } = writing
  const { position } = place
  const createdAt = momentAgo(writing, since)
  if (instead) endGun(place, createdAt, writing.book)
  const greaseId = plan.task === 'refill' ? place.plan.greaseId : null
  const none = { entry: null, doseG: null, intervalHours: null, calendarMonths: null, calendarDays: null, duty: {} }
  const base = aGreasePlan({ siteId, id: random.uuidAt(createdAt), positionId: position.id, greaseId: '', createdAt })
  const row: GreasePlanRow = { ...base, ...none, ...plan, greaseId }
  written.plans.push(row)
  for (const ago of doneDaysAgo) {
    const greasedAt = new Date(momentAgo(writing, ago).getTime() + 3_600_000)
    written.greasings.push(
      aGreasing({
        siteId,
        id: random.uuidAt(greasedAt),
        positionId: position.id,
        planId: row.id,
        task: row.task ?? 'regrease',
        kind: null,
        greasedAt,
        greaseId,
        doseG: row.task === 'refill' ? row.doseG : null,
        plannedDoseG: row.task === 'refill' ? row.doseG : null,
        signedBy,
      }),
    )
  }
}

/** The gun's plan ends, and the rounds that came after are not done. */
function endGun({ plan, position }: Place, at: Date, book: Book): void {
  plan.endedAt ??= at
  const kept = book.greasings.filter(
    ({ positionId, kind, greasedAt }) => positionId !== position.id || kind !== 'regreasing' || greasedAt < at,
  )
  book.greasings.splice(0, book.greasings.length, ...kept)
}

/** The lab said that the two mix; the first of three flushing doses was given at once. */
function writeChange(
  place: Place,
  { to, since, reason }: OtherWays['changes'][number],
  writing: Writing,
  written: WrittenWays,
): void {
  const { siteId, random, engineerId, careful: signedBy } = writing
  const { position, plan: before } = place
  const grease = writing.greases[to]
  if (!grease) throw new Error(`There is no grease ${to}.`)
  const startedAt = momentAgo(writing, since + 20)
  const stateSince = momentAgo(writing, since)
  endGun(place, stateSince, writing.book)
  const flushing = aGreasePlan({
    ...before,
    id: random.uuidAt(stateSince),
    greaseId: grease.id,
    intervalHours: Math.floor(before.intervalHours / 3),
    calendarMonths: Math.floor(before.calendarMonths / 3),
    source: 'by-hand',
    reason: `Change-over to ${grease.name}`,
    duty: {},
    endedAt: null,
    createdAt: stateSince,
  })
  written.plans.push(flushing)
  const greasedAt = new Date(stateSince.getTime() + 3_600_000)
  const dose = { planId: flushing.id, greaseId: grease.id, doseG: before.doseG, plannedDoseG: before.doseG, signedBy }
  written.greasings.push(
    aGreasing({ siteId, id: random.uuidAt(greasedAt), positionId: position.id, greasedAt, ...dose }),
  )
  written.changes.push({
    siteId,
    id: random.uuidAt(startedAt),
    positionId: position.id,
    fromGreaseId: before.greaseId,
    toGreaseId: grease.id,
    way: 'lab-first',
    state: 'flush',
    reason,
    planBeforeId: before.id,
    dosesLeft: 2,
    startedAt,
    startedBy: engineerId,
    stateSince,
    note: 'The mix stayed firm in the test',
  })
}

function momentAgo({ calendar }: Writing, days: number): Date {
  return calendar.at(registerDays - days, 8 * 60)
}
