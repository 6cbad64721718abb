import type { Database, SiteTx, Sql } from '../db/database.ts'
import { refreshPositions } from '../upkeep/refresh.ts'
import { plantDay } from '../upkeep/site.ts'

const batch = 200

/**
 * What only the calendar changes: greasings that became due, overdue or missed since they were last looked at, and flags
 * whose putting off is over. Goes through the sites one by one and through their positions in batches, each in its own
 * transaction; running it twice changes nothing. Returns how many positions were brought up to date.
 */
export async function turnOfDay(db: Database, now: Date): Promise<number> {
  const sites = await db.ask<{ id: string; time_zone: string }>('select id, time_zone from all_sites()')
  let positions = 0
  for (const site of sites) {
    const today = plantDay(now, site.time_zone)
    const scope = { siteId: site.id, personId: null }
    await db.withSite(scope, (tx) => returnPutOff(tx, today))
    let after = '00000000-0000-0000-0000-000000000000'
    for (;;) {
      const ids = await db.readSite(scope, (sql) => turned(sql, site.id, today, after))
      const last = ids.at(-1)
      if (last === undefined) break
      await db.withSite(scope, (tx) => refreshPositions(tx, ids, now, 'the day turned'))
      positions += ids.length
      after = last
    }
  }
  return positions
}

/** Positions whose stored state is older than the day, in the order of their ids. */
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
     ) turned where position_id > $3::uuid order by position_id limit ${batch}`,
    [siteId, today, after],
  )
  return rows.map((row) => row.position_id)
}

async function returnPutOff({ sql, scope }: SiteTx, today: string): Promise<void> {
  await sql(
    `update flag set put_off_until = null, put_off_reason = null, put_off_by = null
     where site_id = $1::uuid and cleared_at is null and put_off_until is not null and put_off_until <= $2::date`,
    [scope.siteId, today],
  )
}
