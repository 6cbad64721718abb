import type { ComplianceGrouping, GreasingCompliance } from '@shaftbook/contract/greasing-reports'
import type { Sql } from '../db/database.ts'
import { hoursOfGreasing } from '../meters/hours-of-greasing.ts'
import { joinWindow } from './window-of.ts'

export interface CompliancePeriod {
  readonly siteId: string
  readonly timeZone: string
  /** Days of the plant, both included. */
  readonly from: string
  readonly to: string
  readonly today: string
  readonly areaId?: string | undefined
  readonly positionId?: string | undefined
  readonly personId?: string | undefined
  readonly roundId?: string | undefined
}

/** `$1` site, `$2` time zone, `$3` first and `$4` last day, `$5` area, `$6` position, `$7` person, `$8` round. */
function parametersOf(period: CompliancePeriod): unknown[] {
  const { siteId, timeZone, from, to, areaId, positionId, personId, roundId } = period
  return [siteId, timeZone, from, to, areaId ?? null, positionId ?? null, personId ?? null, roundId ?? null]
}

const periodBegins = `($3::date::timestamp at time zone $2::text)`
const periodEnds = `(($4::date + 1)::timestamp at time zone $2::text)`
const dayOf = (at: string): string => `(${at} at time zone $2::text)::date`
/** A stop of the chosen round, whoever did it and on which walk. */
const onRound = (alias: string): string => `($8::uuid is null or exists (select from round_stop r
  where r.site_id = ${alias}.site_id and r.position_id = ${alias}.position_id and r.task = ${alias}.task
    and r.round_id = $8::uuid))`
const machineOfPosition = (
  alias: string,
): string => `join position p on p.site_id = ${alias}.site_id and p.id = ${alias}.position_id
  join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
  join machine m on m.site_id = s.site_id and m.id = s.machine_id`
const counts = `not g.withdrawn
  and not exists (select from greasing c where c.site_id = g.site_id and c.corrects_id = g.id)`

/**
 * Every window of the period with its result. A greasing is a window on its own day. An interval that passed with no
 * greasing is `not-done` on the day on which it ended: inside a gap that a greasing closed too late, the whole intervals
 * before that greasing; in one that is open today, all of them, the first once its window was over. R-COMPL.
 */
const events = `done as materialized (
    select g.site_id, g.id, g.position_id, g.task, g.plan_id, g.signed_by, m.area_id, m.hours_per_day, windowed.window_result,
      windowed.before_id, g.greased_at, g.run_hours, ${dayOf('g.greased_at')} as on_day
    from greasing g ${joinWindow('g')} ${machineOfPosition('g')}
    where g.site_id = $1::uuid and g.greased_at >= ${periodBegins} and ${counts}
      and (windowed.window_result = 'missed' or g.greased_at < ${periodEnds}) and windowed.window_result <> 'no-window'
      and ($5::uuid is null or m.area_id = $5::uuid) and ($6::uuid is null or g.position_id = $6::uuid)
      and ${onRound('g')}
  ), closed_gap as (
    select done.site_id, done.position_id, done.task, done.area_id, ${dayOf('b.greased_at')} as from_day, done.on_day,
      greatest(
        coalesce(${hoursOfGreasing('done')} - ${hoursOfGreasing('b')},
          (done.on_day - ${dayOf('b.greased_at')}) * done.hours_per_day) / plan.interval_hours,
        (done.on_day - ${dayOf('b.greased_at')})::float8
          / ((${dayOf('b.greased_at')} + make_interval(months => plan.calendar_months))::date - ${dayOf('b.greased_at')}),
        (done.on_day - ${dayOf('b.greased_at')})::float8 / plan.calendar_days) as intervals
    from done
    join greasing b on b.site_id = done.site_id and b.id = done.before_id
    join grease_plan plan on plan.site_id = done.site_id and plan.id = done.plan_id
    where done.window_result = 'missed' and done.before_id is not null
  ), open_gap as (
    select g.site_id, g.position_id, g.task, g.area_id, ${dayOf('g.last_greased_at')} as from_day, g.overdue_on,
      greatest(1, g.due_on - ${dayOf('g.last_greased_at')}) as interval_days
    from grease_due g
    where g.site_id = $1::uuid and g.state in ('overdue', 'missed') and g.last_greased_at is not null
      and ($5::uuid is null or g.area_id = $5::uuid) and ($6::uuid is null or g.position_id = $6::uuid)
      and ${onRound('g')}
  ), passed as (
    select site_id, position_id, task, area_id, from_day + round((on_day - from_day) * n / intervals)::int as on_day
    from closed_gap, generate_series(1, floor(intervals + 1e-9)::int - 1) as n
    union all
    select site_id, position_id, task, area_id,
      case when n = 1 then overdue_on else from_day + n * interval_days end
    from open_gap, generate_series(1, greatest(1, ($9::date - from_day) / interval_days)) as n
  ), event as materialized (
    select site_id, position_id, task, area_id, signed_by, on_day, window_result::text as result from done
    where on_day <= $4::date and ($7::uuid is null or signed_by = $7::uuid)
    union all
    select site_id, position_id, task, area_id, null, on_day, 'not-done' from passed
    where on_day between $3::date and $4::date and $7::uuid is null
  )`

const tally = ['met', 'early', 'late', 'missed', 'wrong-amount', 'not-done']
  .map((result) => `count(*) filter (where result = '${result}')::int as "${camel(result)}"`)
  .join(', ')

function camel(words: string): string {
  return words.replaceAll(/-(\w)/g, (_, letter: string) => letter.toUpperCase())
}

/** What the windows are put together by, and what each group is called. */
const groupings: Readonly<Record<ComplianceGrouping, { key: string; join: string; name: string }>> = {
  area: { key: 'area_id', join: '', name: 'select name from area where site_id = $1::uuid and id = counted.key' },
  position: {
    key: 'position_id',
    join: '',
    name: 'select tag from position where site_id = $1::uuid and id = counted.key',
  },
  person: { key: 'signed_by', join: '', name: 'select name from person where id = counted.key' },
  // a position on two rounds counts for both
  round: {
    key: 'stop.round_id',
    join: `left join round_stop stop on stop.site_id = event.site_id and stop.position_id = event.position_id
      and stop.task = event.task and ($8::uuid is null or stop.round_id = $8::uuid)`,
    name: 'select name from round where site_id = $1::uuid and id = counted.key',
  },
}

export interface Counted {
  readonly met: number
  readonly early: number
  readonly late: number
  readonly missed: number
  readonly wrongAmount: number
  readonly notDone: number
}
export interface CountedRow extends Counted {
  /** The first day of the month, or null in a row of a group. */
  readonly month: string | null
  readonly id: string | null
  readonly name: string | null
  readonly groupsInAll: number
}

/** Windows of the period by month and by group, the groups with the most windows not met first. */
export async function countWindows(
  sql: Sql,
  period: CompliancePeriod,
  by: ComplianceGrouping,
  limit: number,
): Promise<CountedRow[]> {
  const { key, join, name } = groupings[by]
  return await sql<CountedRow>(
    `with ${events}, grouped as (
       select ${key} as key, ${tally}, count(*) over ()::int as "groupsInAll",
         count(*) filter (where result not in ('met', 'early')) as not_met
       from event ${join} group by 1
     ), counted as (select * from grouped order by not_met desc, key limit $10::int)
     select date_trunc('month', on_day)::date::text as month, null::uuid as id, null::text as name, ${tally},
       0 as "groupsInAll", 0 as not_met
     from event group by 1
     union all
     select null, key, (${name}), met, early, late, missed, "wrongAmount", "notDone", "groupsInAll", not_met from counted
     order by month, not_met desc, name`,
    [...parametersOf(period), period.today, limit],
  )
}

export type Overdose = Omit<GreasingCompliance['overdosed'][number], 'verdict' | 'greasedAt'> & {
  readonly greasedAt: Date
  readonly inAll: number
}

/** Doses of the period of more than one and a half times the planned one, newest first. R-OVER. */
export async function findOverdoses(sql: Sql, period: CompliancePeriod, limit: number): Promise<Overdose[]> {
  return await sql<Overdose>(
    `select g.id, g.position_id as "positionId", p.tag, g.greased_at as "greasedAt", g.dose_g as "doseG",
       g.planned_dose_g as "plannedDoseG", person.name as "signedBy", count(*) over ()::int as "inAll"
     from greasing g ${machineOfPosition('g')} join person on person.id = g.signed_by
     where g.site_id = $1::uuid and g.greased_at >= ${periodBegins} and g.greased_at < ${periodEnds} and ${counts}
       and round(g.dose_g * 1000) * 100 > 150 * round(g.planned_dose_g * 1000)
       and ($5::uuid is null or m.area_id = $5::uuid) and ($6::uuid is null or g.position_id = $6::uuid)
       and ($7::uuid is null or g.signed_by = $7::uuid) and ${onRound('g')}
     order by g.greased_at desc, g.id desc limit $9::int`,
    [...parametersOf(period), limit],
  )
}
