import type { Role } from '@shaftbook/contract/roles'
import type { SiteTx } from '../db/database.ts'

interface Row {
  id: string
}

/** The shafts of a machine and the positions on them. */
export async function ofMachine(
  { scope, sql }: SiteTx,
  machineId: string,
): Promise<{ shaftIds: string[]; positionIds: string[] }> {
  const rows = await sql<{ shaft_id: string; position_id: string | null }>(
    `select s.id as shaft_id, p.id as position_id
     from shaft s left join position p on p.site_id = s.site_id and p.shaft_id = s.id
     where s.site_id = $1::uuid and s.machine_id = $2::uuid`,
    [scope.siteId, machineId],
  )
  return {
    shaftIds: [...new Set(rows.map((row) => row.shaft_id))],
    positionIds: rows.flatMap((row) => row.position_id ?? []),
  }
}

export async function positionsOfShaft({ scope, sql }: SiteTx, shaftId: string): Promise<string[]> {
  const rows = await sql<Row>('select id from position where site_id = $1::uuid and shaft_id = $2::uuid', [
    scope.siteId,
    shaftId,
  ])
  return rows.map((row) => row.id)
}

/** The positions whose current plan asks for this grease. */
export async function positionsGreasedWith({ scope, sql }: SiteTx, greaseId: string): Promise<string[]> {
  const rows = await sql<Row>(
    `select position_id as id from grease_plan
     where site_id = $1::uuid and grease_id = $2::uuid and ended_at is null`,
    [scope.siteId, greaseId],
  )
  return rows.map((row) => row.id)
}

/** Where a bearing is fitted now, and whether it ever was. */
export async function ofBearing(
  { scope, sql }: SiteTx,
  bearingId: string,
): Promise<{ positionIds: string[]; wasFitted: boolean }> {
  const rows = await sql<{ position_id: string; fitted: boolean }>(
    `select position_id, removed_at is null as fitted from fitment where site_id = $1::uuid and bearing_id = $2::uuid`,
    [scope.siteId, bearingId],
  )
  return { positionIds: rows.filter(({ fitted }) => fitted).map((row) => row.position_id), wasFitted: rows.length > 0 }
}

/** The positions that ask for a bearing type or carry one. */
export async function positionsOfType({ scope, sql }: SiteTx, bearingTypeId: string): Promise<string[]> {
  const rows = await sql<Row>(
    `select p.id from position p where p.site_id = $1::uuid and p.bearing_type_id = $2::uuid
     union select f.position_id from bearing b
       join fitment f on f.site_id = b.site_id and f.bearing_id = b.id and f.removed_at is null
       where b.site_id = $1::uuid and b.bearing_type_id = $2::uuid`,
    [scope.siteId, bearingTypeId],
  )
  return rows.map((row) => row.id)
}

/** The role of the person who writes. */
export async function roleOf({ scope, sql }: SiteTx): Promise<Role | undefined> {
  const [row] = await sql<{ role: Role }>(
    'select role from membership where site_id = $1::uuid and person_id = $2::uuid',
    [scope.siteId, scope.personId],
  )
  return row?.role
}

/** Whether a bearing is fitted at the position now. */
export async function isOccupied({ scope, sql }: SiteTx, positionId: string): Promise<boolean> {
  const rows = await sql<Row>(
    'select id from fitment where site_id = $1::uuid and position_id = $2::uuid and removed_at is null',
    [scope.siteId, positionId],
  )
  return rows.length > 0
}

/** The tags of those positions whose bearing was mounted or greased at hours that were read on the machine's meter. */
export async function tagsWithHours({ scope, sql }: SiteTx, positionIds: readonly string[]): Promise<string[]> {
  const rows = await sql<{ tag: string }>(
    `select p.tag from position p
     join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
     where p.site_id = $1::uuid and p.id = any($2::uuid[]) and (f.start_run_hours is not null or exists (
       select from greasing g where g.site_id = f.site_id and g.position_id = f.position_id
         and g.greased_at >= f.fitted_at and g.run_hours is not null))
     order by p.tag`,
    [scope.siteId, positionIds],
  )
  return rows.map((row) => row.tag)
}

export async function areOfOneMachine({ scope, sql }: SiteTx, shaftId: string, otherId: string): Promise<boolean> {
  const rows = await sql(
    'select distinct machine_id from shaft where site_id = $1::uuid and id in ($2::uuid, $3::uuid)',
    [scope.siteId, shaftId, otherId],
  )
  return rows.length < 2
}

export async function isMeterRead({ scope, sql }: SiteTx, meterId: string): Promise<boolean> {
  const rows = await sql<Row>('select id from meter_reading where site_id = $1::uuid and meter_id = $2::uuid limit 1', [
    scope.siteId,
    meterId,
  ])
  return rows.length > 0
}
