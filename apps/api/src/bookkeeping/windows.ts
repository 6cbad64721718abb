import type { GreaseTask } from '@shaftbook/contract/grease-plans'
import type { WindowResult } from '@shaftbook/contract/greasing'
import { plantDay } from '@shaftbook/contract/time-zone'
import { windowOf } from '../greasing/window.ts'
import { hoursOfGreasing } from '../meters/hours-of-greasing.ts'
import { msPerDay, usageDays, usageOf } from '../meters/usage.ts'
import type { Bookkeeping } from './refresh.ts'
import type { SiteDay } from './site.ts'

/** A greasing with all that its window hangs on, as it is known today. */
interface DoneFacts {
  id: string
  position_id: string
  greased_at: Date
  task: GreaseTask
  kind: 'regreasing' | 'initial-fill' | null
  dose_g: number | null
  planned_dose_g: number | null
  plan_id: string | null
  interval_hours: number | null
  calendar_months: number | null
  calendar_days: number | null
  plan_made_at: Date | null
  fitted_at: Date | null
  hours: number | null
  before_id: string | null
  before_at: Date | null
  before_hours: number | null
  hours_per_day: number
  first_at: Date | null
  first_hours: number | null
  last_at: Date | null
  last_hours: number | null
  known_result: WindowResult | null
  known_before_id: string | null
  known_due_on: string | null
  known_due_run_hours: number | null
}

/**
 * Works out again how the greasings of these positions from a moment on met their windows, and stores it where it changed.
 * A greasing, a correction or a reading of the meter that comes to light late moves those after it: also those since the
 * reading before, whose hours lie between the two. Whatever order they arrive in, the windows come out the same. R-COMPL.
 */
export async function refreshWindows(
  { sql, scope }: Bookkeeping,
  site: SiteDay,
  positionIds: readonly string[],
  from: Date,
): Promise<void> {
  const facts = await sql<DoneFacts>(doneFactsSql, [scope.siteId, positionIds, from, usageDays])
  const rows = facts.flatMap((done) => {
    const row = windowRow(done, site)
    const same =
      row.window_result === done.known_result &&
      row.before_id === done.known_before_id &&
      row.due_on === done.known_due_on &&
      row.due_run_hours === done.known_due_run_hours
    return same ? [] : [row]
  })
  if (rows.length === 0) return
  await sql(
    `insert into greasing_window (site_id, id, position_id, greased_at, window_result, before_id, due_on, due_run_hours, worked_out_at)
     select $1::uuid, r.*, $3::timestamptz from jsonb_to_recordset($2::jsonb) as r(id uuid, position_id uuid,
       greased_at timestamptz, window_result text, before_id uuid, due_on date, due_run_hours float8)
     on conflict (site_id, id) do update set window_result = excluded.window_result, before_id = excluded.before_id,
       due_on = excluded.due_on, due_run_hours = excluded.due_run_hours, worked_out_at = excluded.worked_out_at`,
    [scope.siteId, JSON.stringify(rows), site.now],
  )
}

function windowRow(done: DoneFacts, site: SiteDay) {
  const window = judge(done, site)
  return {
    id: done.id,
    position_id: done.position_id,
    greased_at: done.greased_at,
    window_result: window?.result ?? 'no-window',
    before_id: done.before_id,
    due_on: window?.due.dueDate ?? null,
    due_run_hours: window?.due.dueRunHours ?? null,
  }
}

function judge(done: DoneFacts, site: SiteDay) {
  const { plan_id, plan_made_at, fitted_at, hours, before_at, before_hours } = done
  if (plan_id === null || plan_made_at === null || fitted_at === null || done.kind === 'initial-fill') return null
  const day = (at: Date): string => plantDay(at, site.timeZone)
  const asked = plan_made_at > fitted_at ? plan_made_at : fitted_at
  // where it was done before anybody had asked for it, it opens the first interval
  if (before_at === null && asked > done.greased_at) return null
  return windowOf({
    task: done.task,
    plan: {
      intervalHours: done.interval_hours,
      calendarMonths: done.calendar_months,
      calendarDays: done.calendar_days,
    },
    plannedDoseG: done.planned_dose_g,
    doseG: done.dose_g,
    last: {
      done: before_at && { date: day(before_at), runHours: atMost(before_hours, hours) },
      asked: { date: day(asked), runHours: null },
    },
    usage: { today: day(done.greased_at), runHours: hours, hoursPerDay: usageThen(done, day) },
    settings: site.settings,
  })
}

/** Estimated hours are rounded, so they may lie a little above a reading that came after them. */
function atMost(runHours: number | null, later: number | null): number | null {
  return runHours === null || later === null ? runHours : Math.min(runHours, later)
}

/** What ran a day since the one before where both are known by the meter, else the average of the 90 days until then. */
function usageThen(done: DoneFacts, day: (at: Date) => string): number {
  const { hours, before_at, before_hours, greased_at } = done
  const days = before_at ? (greased_at.getTime() - before_at.getTime()) / msPerDay : 0
  if (hours !== null && before_hours !== null && days >= 1)
    return Math.min(24, Math.max(0, (hours - before_hours) / days))
  const { first_at, first_hours, last_at, last_hours } = done
  const first = first_at && first_hours !== null ? { readAt: first_at, totalHours: first_hours } : undefined
  const last = last_at && last_hours !== null ? { readAt: last_at, totalHours: last_hours } : undefined
  return usageOf(first, last, done.hours_per_day, day)
}

const reading = (order: 'asc' | 'desc'): string => `lateral (
    select r.read_at, r.total_hours from meter_reading r
    where r.site_id = place.site_id and r.meter_id = place.meter_id
      and r.read_at between g.greased_at - make_interval(days => $4::int) and g.greased_at
      and not exists (select from meter_reading c where c.site_id = r.site_id and c.corrects_id = r.id)
    order by r.read_at ${order}, r.created_at ${order} limit 1)`
const counts = (alias: string): string => `not ${alias}.withdrawn
      and not exists (select from greasing c where c.site_id = ${alias}.site_id and c.corrects_id = ${alias}.id)`

const doneFactsSql = `
  with place as (
    select p.site_id, p.id, m.hours_per_day, meter.id as meter_id,
      coalesce((
        select max(r.read_at) from meter_reading r
        where r.site_id = meter.site_id and r.meter_id = meter.id and r.read_at < $3::timestamptz
          and not exists (select from meter_reading c where c.site_id = r.site_id and c.corrects_id = r.id)
      ), $3::timestamptz) as since
    from position p
    join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
    join machine m on m.site_id = s.site_id and m.id = s.machine_id
    left join meter on meter.site_id = m.site_id and meter.machine_id = m.id
    where p.site_id = $1::uuid and p.id = any($2::uuid[]))
  select g.id, g.position_id, g.greased_at, g.task, g.kind, g.dose_g, g.planned_dose_g, g.plan_id, plan.interval_hours,
    plan.calendar_months, plan.calendar_days, plan.created_at as plan_made_at, f.fitted_at, ${hoursOfGreasing('g')} as hours,
    before.id as before_id, before.greased_at as before_at, before.hours as before_hours, place.hours_per_day,
    first.read_at as first_at, first.total_hours as first_hours, last.read_at as last_at, last.total_hours as last_hours,
    known.window_result as known_result, known.before_id as known_before_id, known.due_on::text as known_due_on,
    known.due_run_hours as known_due_run_hours
  from place
  join greasing g on g.site_id = place.site_id and g.position_id = place.id and g.greased_at >= place.since
    and ${counts('g')}
  left join fitment f on f.site_id = g.site_id and f.position_id = g.position_id and f.fitted @> g.greased_at
  left join grease_plan plan on plan.site_id = g.site_id and plan.id = g.plan_id
  left join lateral (
    select b.id, b.greased_at, ${hoursOfGreasing('b')} as hours from greasing b
    where b.site_id = g.site_id and b.position_id = g.position_id and b.task = g.task and b.greased_at >= f.fitted_at
      and (b.greased_at, b.id) < (g.greased_at, g.id) and ${counts('b')}
    order by b.greased_at desc, b.id desc limit 1
  ) before on true
  left join ${reading('asc')} first on true
  left join ${reading('desc')} last on true
  left join greasing_window known on known.site_id = g.site_id and known.id = g.id`
