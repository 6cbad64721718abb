import type { SiteTx } from '../db/database.ts'
import { notFound } from '../domain-error.ts'
import { holdMachinesOfPositions } from '../bookkeeping/hold.ts'

/** A position with the machine that it belongs to, and the hour meter of that machine. */
export interface Place {
  readonly positionId: string
  readonly tag: string
  readonly retiredAt: Date | null
  readonly machineId: string
  readonly hoursPerDay: number
  readonly meter: Meter | null
}

export interface Meter {
  readonly id: string
  readonly rolloverAtHours: number | null
}

/**
 * Finds a position and holds its machine until the transaction ends: acts at one machine follow one another, so that none
 * judges by what another is about to change.
 */
export async function holdPlace(tx: SiteTx, positionId: string): Promise<Place> {
  // held before it is read: a statement that waits for a row sees the others as they were before it waited
  await holdMachinesOfPositions(tx, [positionId])
  const [place] = await tx.sql<Place>(
    `select p.id as "positionId", p.tag, p.retired_at as "retiredAt", m.id as "machineId", m.hours_per_day as "hoursPerDay",
       case when meter.id is null then null
         else jsonb_build_object('id', meter.id, 'rolloverAtHours', meter.rollover_at_hours) end as meter
     from position p
     join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
     join machine m on m.site_id = s.site_id and m.id = s.machine_id
     left join meter on meter.site_id = m.site_id and meter.machine_id = m.id
     where p.site_id = $1::uuid and p.id = $2::uuid`,
    [tx.scope.siteId, positionId],
  )
  if (!place) throw notFound('position', 'positionId')
  return place
}

/** The positions whose due dates hang on the machine's hours. */
export async function positionsOfMachine(tx: SiteTx, machineId: string): Promise<string[]> {
  const rows = await tx.sql<{ id: string }>(
    `select p.id from position p join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
     where s.site_id = $1::uuid and s.machine_id = $2::uuid and p.retired_at is null order by p.id`,
    [tx.scope.siteId, machineId],
  )
  return rows.map((row) => row.id)
}
