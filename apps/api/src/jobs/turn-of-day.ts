import type { Database, SiteTx, Sql } from '../db/database.ts'
import { refreshPositions } from '../bookkeeping/refresh.ts'
import { plantDay } from '@shaftbook/contract/time-zone'

const batch = 200

interface TurningSite {
  id: string
  time_zone: string
  refresh_wanted: boolean
}

/** Reads the ids of positions to bring up to date, in order, those behind `after` only. */
type Next = (sql: Sql, after: string) => Promise<string[]>

/**
 * What only the calendar changes, and what a change of the site's settings moved: greasings that became due, overdue or
 * missed since they were last looked at, and flags whose putting off is over. Goes through the sites one by one and through
 * their positions in batches, each in its own transaction; running it twice changes nothing. Returns how many positions
 * turned; days that were only estimated anew are not counted. A site that fails does not keep the others waiting; it is told of at the end.
 */
export async function turnOfDay(db: Database, now: Date): Promise<number> {
  const sites = await db.ask<TurningSite>('select id, time_zone, refresh_wanted from all_sites()')
  let positions = 0
  const failures: unknown[] = []
  for (const site of sites) {
    try {
      positions += await turnSite(db, site, now)
    } catch (error) {
      failures.push(error)
    }
  }
  if (failures.length > 0) throw new AggregateError(failures, `The day did not turn at ${failures.length} site(s).`)
  return positions
}

async function turnSite(db: Database, site: TurningSite, now: Date): Promise<number> {
  const scope = { siteId: site.id, personId: null }
  const today = plantDay(now, site.time_zone)
  // taken back first: a change that comes meanwhile asks again
  if (site.refresh_wanted) await db.withSite(scope, (tx) => setRefreshWanted(tx, false))
  try {
    await db.withSite(scope, (tx) => returnPutOff(tx, today))
    const next: Next = site.refresh_wanted
      ? (sql, after) => planned(sql, site.id, after)
      : (sql, after) => turned(sql, site.id, today, after)
    const positions = await refreshAll(db, scope, next, now)
    await refreshAll(db, scope, (sql, after) => estimated(sql, site.id, today, after), now)
    return positions
  } catch (error) {
    if (site.refresh_wanted) await db.withSite(scope, (tx) => setRefreshWanted(tx, true))
    throw error
  }
}

async function refreshAll(
  db: Database,
  scope: { siteId: string; personId: null },
  next: Next,
  now: Date,
): Promise<number> {
  let positions = 0
  let after = '00000000-0000-0000-0000-000000000000'
  for (;;) {
    const ids = await db.readSite(scope, (sql) => next(sql, after))
    const last = ids.at(-1)
    if (last === undefined) return positions
    await db.withSite(scope, (tx) => refreshPositions(tx, ids, now, 'the day turned'))
    positions += ids.length
    after = last
  }
}

/** The review of the plan q is not asked for yet. */
const notFlagged = `not exists (select from flag g
  where g.site_id = q.site_id and g.position_id = q.position_id and g.subject_id = q.id and g.kind = 'plan-review'
    and g.cleared_at is null)`

/** Positions whose stored state is older than the day, and plans whose day of review has come. */
async function turned(sql: Sql, siteId: string, today: string, after: string): Promise<string[]> {
  const rows = await sql<{ position_id: string }>(
    `select position_id from (
       select position_id from grease_due where site_id = $1::uuid and state = 'not-due' and due_soon_on <= $2::date
       union select position_id from grease_due
         where site_id = $1::uuid and state in ('not-due', 'due-soon') and due_on <= $2::date
       union select position_id from grease_due
         where site_id = $1::uuid and state in ('not-due', 'due-soon', 'due') and overdue_on <= $2::date
       union select position_id from grease_due
         where site_id = $1::uuid and state in ('not-due', 'due-soon', 'due', 'overdue') and missed_on <= $2::date
       union select q.position_id from grease_plan q
         where q.site_id = $1::uuid and q.ended_at is null and q.review_on <= $2::date and ${notFlagged}
           and not exists (select from plan_review v where v.site_id = q.site_id and v.plan_id = q.id)
       union select q.position_id from plan_review v
         join grease_plan q on q.site_id = v.site_id and q.id = v.plan_id and q.ended_at is null
         where v.site_id = $1::uuid and v.review_on <= $2::date and ${notFlagged}
           and not exists (select from plan_review n where n.site_id = v.site_id and n.plan_id = v.plan_id
             and (n.decided_at, n.id) > (v.decided_at, v.id))
     ) turned where position_id > $3::uuid order by position_id limit ${batch}`,
    [siteId, today, after],
  )
  return rows.map((row) => row.position_id)
}

/** Positions whose day was estimated on another day: the average of the last 90 days has moved on. */
async function estimated(sql: Sql, siteId: string, today: string, after: string): Promise<string[]> {
  const rows = await sql<{ position_id: string }>(
    `select distinct position_id from grease_due
     where site_id = $1::uuid and worked_out_on < $2::date and (estimated or due_run_hours is not null)
       and position_id > $3::uuid order by position_id limit ${batch}`,
    [siteId, today, after],
  )
  return rows.map((row) => row.position_id)
}

/** All positions that have a greasing to wait for. */
async function planned(sql: Sql, siteId: string, after: string): Promise<string[]> {
  const rows = await sql<{ position_id: string }>(
    `select position_id from grease_due where site_id = $1::uuid and position_id > $2::uuid order by position_id limit ${batch}`,
    [siteId, after],
  )
  return rows.map((row) => row.position_id)
}

async function setRefreshWanted({ sql, scope }: SiteTx, wanted: boolean): Promise<void> {
  await sql('update site set refresh_wanted = $2 where id = $1::uuid', [scope.siteId, wanted])
}

async function returnPutOff({ sql, scope }: SiteTx, today: string): Promise<void> {
  await sql(
    `update flag set put_off_until = null, put_off_reason = null, put_off_by = null
     where site_id = $1::uuid and cleared_at is null and put_off_until is not null and put_off_until <= $2::date`,
    [scope.siteId, today],
  )
}
