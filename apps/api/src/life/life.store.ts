import type { LifeSummary } from '@shaftbook/contract/life'
import type { Sql } from '../db/database.ts'

/** Every stay of a bearing with its removal that counts and its hours up to now; `$1` is the site. */
const stays = `select f.position_id, f.removed_at, f.hours_source, r.end_kind, r.mode_clause,
    case when f.removed_at is not null then f.run_hours
      when meter.last_total_hours is not null and f.start_run_hours is not null
        then greatest(0, meter.last_total_hours - f.start_run_hours) end as hours
  from fitment f
  join position p on p.site_id = f.site_id and p.id = f.position_id
  join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
  left join meter on meter.site_id = s.site_id and meter.machine_id = s.machine_id
  left join removal r on r.site_id = f.site_id and r.id = f.removal_id
  where f.site_id = $1::uuid`

export type Totals = Pick<LifeSummary, 'failures' | 'notFailed' | 'lost' | 'running'> & LifeHours
interface LifeHours {
  readonly metered: number
  readonly estimated: number
  readonly runningHours: number
  readonly staysWithout: number
}

export async function countLives(sql: Sql, siteId: string): Promise<Totals> {
  const [totals] = await sql<Totals>(
    `select count(*) filter (where end_kind = 'failed')::int as failures,
       count(*) filter (where end_kind = 'not-failed')::int as "notFailed",
       count(*) filter (where removed_at is not null and (end_kind = 'lost' or end_kind is null))::int as lost,
       count(*) filter (where removed_at is null)::int as running,
       coalesce(sum(hours) filter (where removed_at is not null and hours_source = 'meter'), 0) as metered,
       coalesce(sum(hours) filter (where removed_at is not null and hours_source = 'estimate'), 0) as estimated,
       coalesce(sum(hours) filter (where removed_at is null), 0) as "runningHours",
       count(*) filter (where hours is null)::int as "staysWithout"
     from (${stays}) stay`,
    [siteId],
  )
  return totals as Totals
}

/** Failures by the mode that was written down, the most frequent first; null where none was. */
export async function countModes(sql: Sql, siteId: string): Promise<{ modeClause: string | null; failures: number }[]> {
  return await sql(
    `select r.mode_clause as "modeClause", count(*)::int as failures
     from fitment f join removal r on r.site_id = f.site_id and r.id = f.removal_id
     where f.site_id = $1::uuid and r.end_kind = 'failed'
     group by r.mode_clause order by failures desc, r.mode_clause`,
    [siteId],
  )
}

/** Positions that failed twice or more, the most failures first, then the fewest hours. */
export async function worstPositions(sql: Sql, siteId: string, limit: number): Promise<LifeSummary['worst']> {
  return await sql(
    `select worst.position_id as "positionId", p.tag, m.name as "machineName", worst.failures, worst.stays,
       worst.hours as "runHours", worst.without as "staysWithoutHours"
     from (
       select position_id, count(*) filter (where end_kind = 'failed')::int as failures, count(*)::int as stays,
         coalesce(sum(hours), 0) as hours, count(*) filter (where hours is null)::int as without
       from (${stays}) stay group by position_id
       having count(*) filter (where end_kind = 'failed') >= 2
       order by failures desc, hours, position_id limit $2::int
     ) worst
     join position p on p.site_id = $1::uuid and p.id = worst.position_id
     join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
     join machine m on m.site_id = s.site_id and m.id = s.machine_id
     order by worst.failures desc, worst.hours, worst.position_id`,
    [siteId, limit],
  )
}
