import type { Sql } from '../db/database.ts'
import { refreshDue } from './due.ts'
import { refreshPositionFlags, refreshShaftFlags } from './flags.ts'
import { holdMachinesOfPositions, holdMachinesOfShafts } from './hold.ts'
import { loadSite } from './site.ts'
import { refreshWindows } from './windows.ts'

/** Where bookkeeping works: the open transaction of the write that made it necessary. */
export interface Bookkeeping {
  readonly scope: { readonly siteId: string; readonly personId: string | null }
  readonly sql: Sql
}

/**
 * Brings what the lists show of these positions up to date after a write: how greasings met their windows, next due ones,
 * then flags. A constant number of statements, whatever the number of positions. `how` says in a few words which act it was;
 * cleared flags keep it. `since`: the earliest moment that the act told of; windows before it stay as they are.
 */
export async function refreshPositions(
  bookkeeping: Bookkeeping,
  positionIds: readonly string[],
  now: Date,
  how: string,
  since?: Date,
): Promise<void> {
  if (positionIds.length === 0) return
  await holdMachinesOfPositions(bookkeeping, positionIds)
  const site = await loadSite(bookkeeping, now)
  if (since) await refreshWindows(bookkeeping, site, positionIds, since)
  await refreshDue(bookkeeping, site, positionIds)
  await refreshPositionFlags(bookkeeping, site, positionIds, how)
}

/** Brings the locating flags of these shafts up to date. */
export async function refreshShafts(
  bookkeeping: Bookkeeping,
  shaftIds: readonly string[],
  now: Date,
  how: string,
): Promise<void> {
  if (shaftIds.length === 0) return
  await holdMachinesOfShafts(bookkeeping, shaftIds)
  const site = await loadSite(bookkeeping, now)
  await refreshShaftFlags(bookkeeping, site, shaftIds, how)
}
