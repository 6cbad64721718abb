import type { Sql } from '../db/database.ts'
import { refreshDue } from './due.ts'
import { refreshPositionFlags, refreshShaftFlags } from './flags.ts'
import { holdMachinesOfPositions, holdMachinesOfShafts } from './hold.ts'
import { loadSite } from './site.ts'

/** Where upkeep works: the open transaction of the write that made it necessary. */
export interface Upkeep {
  readonly scope: { readonly siteId: string; readonly personId: string | null }
  readonly sql: Sql
}

/**
 * Brings what the lists show of these positions up to date after a write: next due greasing, then flags. A constant number
 * of statements, whatever the number of positions. `how` says in a few words which act it was; cleared flags keep it.
 */
export async function refreshPositions(
  upkeep: Upkeep,
  positionIds: readonly string[],
  now: Date,
  how: string,
): Promise<void> {
  if (positionIds.length === 0) return
  await holdMachinesOfPositions(upkeep, positionIds)
  const site = await loadSite(upkeep, now)
  await refreshDue(upkeep, site, positionIds)
  await refreshPositionFlags(upkeep, site, positionIds, how)
}

/** Brings the locating flags of these shafts up to date. */
export async function refreshShafts(
  upkeep: Upkeep,
  shaftIds: readonly string[],
  now: Date,
  how: string,
): Promise<void> {
  if (shaftIds.length === 0) return
  await holdMachinesOfShafts(upkeep, shaftIds)
  const site = await loadSite(upkeep, now)
  await refreshShaftFlags(upkeep, site, shaftIds, how)
}
