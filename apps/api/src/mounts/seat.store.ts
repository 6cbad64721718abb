import type { KitCheckPlace } from '@shaftbook/contract/judge-kit-check'
import type { SiteTx } from '../db/database.ts'

/** What the register says today of the place that a bearing goes on, and of its kit. */
export interface Seat {
  readonly position: KitCheckPlace['position']
  readonly shaftSystem: 'metric' | 'inch'
  readonly kit: { readonly id: string; readonly name: string; readonly version: number } | null
}

export async function findSeat(tx: SiteTx, positionId: string): Promise<Seat> {
  const [seat] = await tx.sql<Seat>(
    `select jsonb_build_object('tag', p.tag, 'seat', p.seat, 'locating', p.locating, 'shaftDiameterMm', p.shaft_diameter_mm)
         as position,
       p.shaft_system as "shaftSystem",
       case when k.id is null then null else jsonb_build_object('id', k.id, 'name', k.name, 'version', k.version) end as kit
     from position p left join kit k on k.site_id = p.site_id and k.id = p.kit_id
     where p.site_id = $1::uuid and p.id = $2::uuid`,
    [tx.scope.siteId, positionId],
  )
  if (!seat) throw new Error(`position ${positionId} is not there`)
  return seat
}
