import { plantDay } from '@shaftbook/contract/time-zone'
import { SiteSettings } from '@shaftbook/contract/access'
import type { Bookkeeping } from './refresh.ts'

/** What bookkeeping needs of the site: its settings and the plant's day. */
export interface SiteDay {
  readonly settings: SiteSettings
  readonly timeZone: string
  /** The plant's day, e.g. 2026-11-24. */
  readonly today: string
  readonly now: Date
}

export async function loadSite({ scope, sql }: Bookkeeping, now: Date): Promise<SiteDay> {
  const [site] = await sql<{ time_zone: string; settings: unknown }>(
    'select time_zone, settings from site where id = $1::uuid',
    [scope.siteId],
  )
  if (!site) throw new Error(`site ${scope.siteId} is not there`)
  return {
    settings: SiteSettings.parse(site.settings),
    timeZone: site.time_zone,
    today: plantDay(now, site.time_zone),
    now,
  }
}
