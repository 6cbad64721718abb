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

/** Whether a bearing is fitted at the position now. */
export async function isOccupied({ scope, sql }: SiteTx, positionId: string): Promise<boolean> {
  const rows = await sql<Row>(
    'select id from fitment where site_id = $1::uuid and position_id = $2::uuid and removed_at is null',
    [scope.siteId, positionId],
  )
  return rows.length > 0
}
