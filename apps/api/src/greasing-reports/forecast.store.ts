import type { Sql } from '../db/database.ts'
import { usageDays, usageOf } from '../meters/usage.ts'

export interface ForecastPeriod {
  readonly siteId: string
  readonly timeZone: string
  readonly now: Date
  readonly areaId?: string | undefined
  /** Days of the plant: today, the Monday of its week, and the last day of the period. */
  readonly today: string
  readonly monday: string
  readonly until: string
}

interface MachineFacts {
  machine_id: string
  hours_per_day: number
  first_at: Date | null
  first_hours: number | null
  last_at: Date | null
  last_hours: number | null
}

/** Average running hours a day of each machine, as the due dates go by them. R-CAL. */
export async function machineUsages(
  sql: Sql,
  { siteId, areaId, now }: ForecastPeriod,
  day: (at: Date) => string,
): Promise<{ machine_id: string; hours_per_day: number }[]> {
  const machines = await sql<MachineFacts>(
    `select m.id as machine_id, m.hours_per_day, first.read_at as first_at, first.total_hours as first_hours,
       meter.last_read_at as last_at, meter.last_total_hours as last_hours
     from machine m
     left join meter on meter.site_id = m.site_id and meter.machine_id = m.id
     left join lateral (
       select r.read_at, r.total_hours from meter_reading r
       where r.site_id = meter.site_id and r.meter_id = meter.id and r.read_at >= $3::timestamptz
         and not exists (select from meter_reading c where c.site_id = r.site_id and c.corrects_id = r.id)
       order by r.read_at limit 1
     ) first on true
     where m.site_id = $1::uuid and ($2::uuid is null or m.area_id = $2::uuid)`,
    [siteId, areaId ?? null, new Date(now.getTime() - usageDays * 86_400_000)],
  )
  return machines.map((machine) => ({
    machine_id: machine.machine_id,
    hours_per_day: usageOf(
      reading(machine.first_at, machine.first_hours),
      reading(machine.last_at, machine.last_hours),
      machine.hours_per_day,
      day,
    ),
  }))
}

function reading(readAt: Date | null, totalHours: number | null) {
  return readAt === null || totalHours === null ? undefined : { readAt, totalHours }
}

export interface ForecastRow {
  readonly week: number
  readonly task: string
  readonly greaseId: string | null
  readonly greaseName: string | null
  readonly stops: number
  readonly waiting: number
  readonly estimated: number
  readonly grams: number
}

/**
 * The stops of the period by week, task and grease. Each work that is due is done on its day, what was due before on this
 * day; it comes again after its interval, in run hours, months or days, the earlier.
 */
export async function forecastRows(
  sql: Sql,
  { siteId, areaId, today, monday, until }: ForecastPeriod,
  usages: readonly object[],
): Promise<ForecastRow[]> {
  return await sql<ForecastRow>(
    `with recursive usage as materialized (
       select * from jsonb_to_recordset($6::jsonb) as u(machine_id uuid, hours_per_day float8)
     ), stop as (
       select d.task, plan.grease_id, plan.dose_g, d.estimated, d.due_on < $3::date as waiting,
         greatest(d.due_on, $3::date) as on_day, plan.calendar_months, plan.calendar_days,
         case when usage.hours_per_day > 0
           then greatest(1, least(ceil(plan.interval_hours / usage.hours_per_day - 1e-9), 40000))::int end as run_days
       from grease_due d
       join grease_plan plan on plan.site_id = d.site_id and plan.id = d.id
       join position p on p.site_id = d.site_id and p.id = d.position_id
       join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
       left join usage on usage.machine_id = s.machine_id
       where d.site_id = $1::uuid and d.due_on <= $5::date and ($2::uuid is null or d.area_id = $2::uuid)
       union all
       select task, grease_id, dose_g, estimated, false, next.on_day, calendar_months, calendar_days, run_days
       from stop, lateral (
         select least(stop.on_day + run_days, (stop.on_day + make_interval(months => calendar_months))::date,
           stop.on_day + calendar_days) as on_day
       ) next
       where next.on_day <= $5::date
     )
     select load.*, grease.name as "greaseName" from (
       select (on_day - $4::date) / 7 as week, task, grease_id as "greaseId", count(*)::int as stops,
         count(*) filter (where waiting)::int as waiting, count(*) filter (where estimated)::int as estimated,
         coalesce(sum(dose_g), 0) as grams
       from stop group by 1, 2, 3
     ) load
     left join grease on grease.site_id = $1::uuid and grease.id = load."greaseId"
     order by week, task, "greaseName"`,
    [siteId, areaId ?? null, today, monday, until, JSON.stringify(usages)],
  )
}
