import type { Bookkeeping } from './refresh.ts'

/**
 * Holds the machines of these positions until the transaction ends, as every act at a shaft does: what is brought up to
 * date is read after the acts that were under way, so that none of them is overwritten by what was true before it.
 */
export async function holdMachinesOfPositions(
  { sql, scope }: Bookkeeping,
  positionIds: readonly string[],
): Promise<void> {
  await sql(
    `select m.id from machine m where m.site_id = $1::uuid and m.id in (
       select s.machine_id from position p join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
       where p.site_id = $1::uuid and p.id = any($2::uuid[]))
     order by m.id for no key update of m`,
    [scope.siteId, positionIds],
  )
}

/** Holds the machines of these shafts until the transaction ends. */
export async function holdMachinesOfShafts({ sql, scope }: Bookkeeping, shaftIds: readonly string[]): Promise<void> {
  await sql(
    `select m.id from machine m where m.site_id = $1::uuid and m.id in (
       select s.machine_id from shaft s where s.site_id = $1::uuid and s.id = any($2::uuid[]))
     order by m.id for no key update of m`,
    [scope.siteId, shaftIds],
  )
}
