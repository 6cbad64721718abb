import type { SiteTx } from '../db/database.ts'

/** A stay and who signed its beginning and its end. */
export interface SignedStay {
  readonly id: string
  readonly designation: string
  readonly serial: string | null
  readonly fittedAt: Date
  readonly mountedBy: string | null
  readonly removedAt: Date | null
  readonly removedBy: string | null
}

/** The stay at a position that something was begun with, and the one that is open now. */
export async function findStaysSince(tx: SiteTx, positionId: string, begunWith: string | null): Promise<SignedStay[]> {
  return await tx.sql<SignedStay>(
    `select f.id, t.designation, b.serial, f.fitted_at as "fittedAt", mounter.name as "mountedBy",
       f.removed_at as "removedAt", remover.name as "removedBy"
     from fitment f
     join bearing b on b.site_id = f.site_id and b.id = f.bearing_id
     join bearing_type t on t.site_id = b.site_id and t.id = b.bearing_type_id
     left join mount_record m on m.site_id = f.site_id and m.id = f.mount_record_id
     left join person mounter on mounter.id = m.signed_by
     left join removal r on r.site_id = f.site_id and r.id = f.removal_id
     left join person remover on remover.id = r.signed_by
     where f.site_id = $1::uuid and f.position_id = $2::uuid and (f.removed_at is null or f.id = $3::uuid)
     order by f.fitted_at`,
    [tx.scope.siteId, positionId, begunWith],
  )
}
