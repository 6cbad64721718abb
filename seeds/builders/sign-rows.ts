import type { ClientBase } from 'pg'

export interface MountSigning {
  mountRecordId: string
  fitmentId: string
  signedAt: Date
  signedBy: string
}

/** Signs mount records whose readings are in: each then belongs to its fitment and never changes again. */
export async function signMounts(client: ClientBase, signings: readonly MountSigning[]): Promise<void> {
  await client.query(
    `update mount_record m set fitment_id = s."fitmentId", signed_at = s."signedAt", signed_by = s."signedBy"
     from jsonb_to_recordset($1)
       as s("mountRecordId" uuid, "fitmentId" uuid, "signedAt" timestamptz, "signedBy" uuid)
     where m.site_id = current_site() and m.id = s."mountRecordId"`,
    [JSON.stringify(signings)],
  )
}

export interface FitmentRecords {
  fitmentId: string
  mountRecordId: string | null
  removalId: string | null
}

/** Names the records that count of each fitment: how it was mounted and, when it has ended, why it left. */
export async function nameRecords(client: ClientBase, fitments: readonly FitmentRecords[]): Promise<void> {
  await client.query(
    `update fitment f set mount_record_id = r."mountRecordId", removal_id = r."removalId"
     from jsonb_to_recordset($1) as r("fitmentId" uuid, "mountRecordId" uuid, "removalId" uuid)
     where f.site_id = current_site() and f.id = r."fitmentId"`,
    [JSON.stringify(fitments)],
  )
}
