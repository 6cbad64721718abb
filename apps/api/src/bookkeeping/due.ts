import { plantDay } from '@shaftbook/contract/time-zone'
import type { NextDue } from '@shaftbook/bearing/due'
import { nextOfTask } from '@shaftbook/bearing/due-task'
import type { GreaseTask, GreaseWay } from '@shaftbook/contract/grease-plans'
import { usageDays, usageOf, type UsageReading } from '../meters/usage.ts'
import { hoursOfGreasing } from '../meters/hours-of-greasing.ts'
import type { Bookkeeping } from './refresh.ts'
import type { SiteDay } from './site.ts'

const never = '9999-12-31'

interface PlanFacts {
  plan_id: string
  position_id: string
  area_id: string
  task: GreaseTask
  way: GreaseWay | null
  interval_hours: number | null
  calendar_months: number | null
  calendar_days: number | null
  fitted_at: Date
  plan_made_at: Date
  hours_per_day: number
  meter_hours: number | null
  meter_read_at: Date | null
  earlier_hours: number | null
  earlier_read_at: Date | null
  last_id: string | null
  greased_at: Date | null
  greased_hours: number | null
}

/**
 * Works out the next greasing, check or turning of each plan of a position that carries a bearing, and stores it in
 * grease_due. What was done counts for the bearing that was in: before the present one was fitted it does not. R-CAL.
 */
export async function refreshDue(
  bookkeeping: Bookkeeping,
  site: SiteDay,
  positionIds: readonly string[],
): Promise<void> {
  const facts = await loadPlanFacts(bookkeeping, site, positionIds)
  const rows = facts.map((plan) => dueRow(plan, site))
  await bookkeeping.sql(
    `delete from grease_due where site_id = $1::uuid and position_id = any($2::uuid[]) and not (id = any($3::uuid[]))`,
    [bookkeeping.scope.siteId, positionIds, rows.map((row) => row.id)],
  )
  await bookkeeping.sql(
    `insert into grease_due (site_id, id, position_id, area_id, last_greasing_id, last_greased_at, task, way, due_on,
       due_run_hours, due_by, estimated, due_soon_on, overdue_on, missed_on, state, worked_out_on)
     select $1::uuid, r.* from jsonb_to_recordset($2::jsonb) as r(id uuid, position_id uuid, area_id uuid, last_greasing_id uuid,
       last_greased_at timestamptz, task text, way text, due_on date, due_run_hours float8, due_by text, estimated boolean, due_soon_on date,
       overdue_on date, missed_on date, state text, worked_out_on date)
     on conflict (site_id, id) do update set
       area_id = excluded.area_id, last_greasing_id = excluded.last_greasing_id, last_greased_at = excluded.last_greased_at,
       due_on = excluded.due_on, due_run_hours = excluded.due_run_hours, due_by = excluded.due_by,
       estimated = excluded.estimated, due_soon_on = excluded.due_soon_on, overdue_on = excluded.overdue_on,
       missed_on = excluded.missed_on, state = excluded.state, worked_out_on = excluded.worked_out_on`,
    [bookkeeping.scope.siteId, JSON.stringify(rows)],
  )
}

async function loadPlanFacts(
  bookkeeping: Bookkeeping,
  site: SiteDay,
  positionIds: readonly string[],
): Promise<PlanFacts[]> {
  return await bookkeeping.sql<PlanFacts>(
    `select plan.id as plan_id, p.id as position_id, m.area_id, plan.task, plan.way, plan.interval_hours,
       plan.calendar_months, plan.calendar_days, f.fitted_at,
       plan.created_at as plan_made_at, m.hours_per_day, meter.last_total_hours as meter_hours,
       meter.last_read_at as meter_read_at, earlier.total_hours as earlier_hours, earlier.read_at as earlier_read_at,
       last.id as last_id, last.greased_at, ${hoursOfGreasing('last')} as greased_hours
     from position p
     join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
     join machine m on m.site_id = s.site_id and m.id = s.machine_id
     join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
     join grease_plan plan on plan.site_id = p.site_id and plan.position_id = p.id and plan.ended_at is null
       and plan.task is not null
     left join meter on meter.site_id = m.site_id and meter.machine_id = m.id
     left join lateral (
       select r.total_hours, r.read_at from meter_reading r
       where r.site_id = meter.site_id and r.meter_id = meter.id and r.read_at >= $3::timestamptz
         and not exists (select from meter_reading c where c.site_id = r.site_id and c.corrects_id = r.id)
       order by r.read_at limit 1
     ) earlier on true
     left join lateral (
       select g.site_id, g.id, g.position_id, g.greased_at, g.run_hours from greasing g
       where g.site_id = p.site_id and g.position_id = p.id and g.task = plan.task and g.greased_at >= f.fitted_at
         and not g.withdrawn
         and not exists (select from greasing c where c.site_id = g.site_id and c.corrects_id = g.id)
       order by g.greased_at desc, g.id desc limit 1
     ) last on true
     where p.site_id = $1::uuid and p.id = any($2::uuid[]) and p.retired_at is null`,
    [bookkeeping.scope.siteId, positionIds, new Date(site.now.getTime() - usageDays * 86_400_000)],
  )
}

function dueRow(plan: PlanFacts, site: SiteDay) {
  const day = (at: Date): string => plantDay(at, site.timeZone)
  const hoursPerDay = usage(plan, day)
  const start = day(plan.fitted_at > plan.plan_made_at ? plan.fitted_at : plan.plan_made_at)
  const next = nextOfTask(
    plan.task,
    { intervalHours: plan.interval_hours, calendarMonths: plan.calendar_months, calendarDays: plan.calendar_days },
    {
      done: plan.greased_at && { date: day(plan.greased_at), runHours: plan.greased_hours },
      asked: { date: start, runHours: null },
    },
    { today: site.today, runHours: hoursNow(plan, hoursPerDay, site.now), hoursPerDay },
    { windowPercent: site.settings.greasingWindowPercent, missedPercent: site.settings.missedBeyondPercent },
  )
  return {
    id: plan.plan_id,
    position_id: plan.position_id,
    area_id: plan.area_id,
    last_greasing_id: plan.last_id,
    last_greased_at: plan.greased_at,
    task: plan.task,
    way: plan.way,
    due_on: next.dueDate ?? (next.state === 'never-greased' ? start : never),
    due_run_hours: next.dueRunHours,
    due_by: dueBy(next),
    estimated: next.estimated,
    due_soon_on: next.dueSoonFrom ?? never,
    overdue_on: next.overdueFrom ?? never,
    missed_on: next.missedFrom ?? never,
    state: next.state,
    worked_out_on: site.today,
  }
}

function dueBy(next: NextDue): 'hours' | 'calendar' | 'never-greased' {
  if (next.state === 'never-greased') return 'never-greased'
  return next.dueBy === 'run-hours' ? 'hours' : 'calendar'
}

/** Average running hours a day: from the meter's readings of the last 90 days, or what the machine's estimate says. */
function usage(plan: PlanFacts, day: (at: Date) => string): number {
  const { earlier_hours, earlier_read_at, meter_hours, meter_read_at } = plan
  const first = earlier_hours === null || !earlier_read_at ? undefined : reading(earlier_read_at, earlier_hours)
  const last = meter_hours === null || !meter_read_at ? undefined : reading(meter_read_at, meter_hours)
  return usageOf(first, last, plan.hours_per_day, day)
}

function reading(readAt: Date, totalHours: number): UsageReading {
  return { readAt, totalHours }
}

/** Run hours now: the newest reading and what ran since by the average; never less than at the last greasing. */
function hoursNow(plan: PlanFacts, hoursPerDay: number, now: Date): number | null {
  if (plan.meter_hours === null || !plan.meter_read_at) return null
  const days = Math.max(0, (now.getTime() - plan.meter_read_at.getTime()) / 86_400_000)
  return Math.max(plan.meter_hours + days * hoursPerDay, plan.greased_hours ?? 0)
}
