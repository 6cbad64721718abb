import type { DueState } from '@shaftbook/contract/greasing'
import type { Sql } from '../db/database.ts'

/** A task that is due at a position, as it is told outside the dashboard. */
export interface DueWork {
  readonly planId: string
  readonly positionId: string
  readonly tag: string
  readonly positionName: string
  readonly machineName: string
  readonly areaName: string
  readonly task: string
  readonly greaseName: string | null
  readonly doseG: number | null
  readonly dueOn: string
  readonly state: DueState
  readonly estimated: boolean
}

export interface DueWorkQuery {
  readonly siteId: string
  /** None: the whole site. */
  readonly areaIds: readonly string[]
  readonly roundId: string | null
  readonly states: readonly DueState[] | null
  /** The last due day that is told of. */
  readonly until: string
  readonly limit: number
}

/** What is due, the longest due first; `inAll` counts what the limit left out too. */
export async function findDueWork(sql: Sql, query: DueWorkQuery): Promise<{ work: DueWork[]; inAll: number }> {
  const { siteId, areaIds, roundId, states, until, limit } = query
  const rows = await sql<DueWork & { inAll: number }>(
    `select d.*, p.tag, p.name as "positionName", m.name as "machineName", a.name as "areaName", grease.name as "greaseName",
       plan.dose_g as "doseG"
     from (
       select d.site_id, d.id as "planId", d.position_id as "positionId", d.area_id, d.task, d.due_on::text as "dueOn", d.state,
         d.estimated, count(*) over ()::int as "inAll"
       from grease_due d
       where d.site_id = $1::uuid and d.due_on <= $5::date and (cardinality($2::uuid[]) = 0 or d.area_id = any($2::uuid[]))
         and ($3::uuid is null or exists (select from round_stop r
           where r.site_id = d.site_id and r.position_id = d.position_id and r.task = d.task and r.round_id = $3::uuid))
         and ($4::text[] is null or d.state = any($4::text[]))
       order by d.due_on, d.id limit $6::int
     ) d
     join position p on p.site_id = d.site_id and p.id = d."positionId"
     join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
     join machine m on m.site_id = s.site_id and m.id = s.machine_id
     join area a on a.site_id = d.site_id and a.id = d.area_id
     join grease_plan plan on plan.site_id = d.site_id and plan.id = d."planId"
     left join grease on grease.site_id = plan.site_id and grease.id = plan.grease_id
     order by d."dueOn", d."planId"`,
    [siteId, areaIds, roundId, states, until, limit],
  )
  return { work: rows, inAll: rows[0]?.inAll ?? 0 }
}
