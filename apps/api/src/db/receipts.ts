import { createHash } from 'node:crypto'
import { fieldError } from '../domain-error.ts'
import type { SiteTx } from './database.ts'

/**
 * Takes in the request that makes a record with a client-made id. 'new': make it. 'repeat': the same request came before,
 * answer with the record that it made. The same id with another body is refused. Two at once: the second waits for the first.
 */
export async function receive(tx: SiteTx, endpoint: string, id: string, body: unknown): Promise<'new' | 'repeat'> {
  const bodyHash = createHash('sha256').update(canonical(body)).digest('base64url')
  const [made] = await tx.sql<{ id: string }>(
    `insert into receipt (site_id, id, endpoint, body_hash) values ($1::uuid, $2::uuid, $3, $4)
     on conflict (site_id, id) do nothing returning id`,
    [tx.scope.siteId, id, endpoint, bodyHash],
  )
  if (made) return 'new'
  const [first] = await tx.sql<{ endpoint: string; body_hash: string }>(
    'select endpoint, body_hash from receipt where site_id = $1::uuid and id = $2::uuid',
    [tx.scope.siteId, id],
  )
  if (first?.endpoint === endpoint && first.body_hash === bodyHash) return 'repeat'
  throw fieldError('id-already-used', 'id', 'This id was already sent with other contents: the first record stays.')
}

/** JSON with sorted keys, so that the order of fields in a body does not matter. */
function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  )
}
