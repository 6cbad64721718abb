import { createHash } from 'node:crypto'
import { fieldError } from '../domain-error.ts'
import type { SiteTx } from './database.ts'

/**
 * Takes in the request that makes a record with a client-made id. 'new': make it. 'repeat': the same request came before,
 * answer with the record that it made. The same id with another body is refused. Two at once: the second waits for the first.
 */
export async function receive(tx: SiteTx, endpoint: string, id: string, body: unknown): Promise<'new' | 'repeat'> {
  const bodyHash = hashOf(body)
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

/**
 * What became before of many requests with client-made ids, in one statement: 'new' ones are not kept yet (`keepReceipts`),
 * since one that is refused may be sent again.
 */
export async function knownReceipts(
  { sql, scope }: SiteTx,
  endpoint: string,
  bodies: readonly { readonly id: string }[],
): Promise<Map<string, 'repeat' | 'other'>> {
  const rows = await sql<{ id: string; endpoint: string; body_hash: string }>(
    'select id, endpoint, body_hash from receipt where site_id = $1::uuid and id = any($2::uuid[])',
    [scope.siteId, bodies.map(({ id }) => id)],
  )
  const hashes = new Map(bodies.map((body) => [body.id, hashOf(body)]))
  return new Map(
    rows.map((row) => [row.id, row.endpoint === endpoint && row.body_hash === hashes.get(row.id) ? 'repeat' : 'other']),
  )
}

/** Takes in many requests at once, in one statement. */
export async function keepReceipts(
  { sql, scope }: SiteTx,
  endpoint: string,
  bodies: readonly { readonly id: string }[],
): Promise<void> {
  const rows = bodies.map((body) => ({ id: body.id, body_hash: hashOf(body) }))
  await sql(
    `insert into receipt (site_id, id, endpoint, body_hash)
     select $1::uuid, r.id, $2, r.body_hash from jsonb_to_recordset($3::jsonb) as r(id uuid, body_hash text)`,
    [scope.siteId, endpoint, JSON.stringify(rows)],
  )
}

function hashOf(body: unknown): string {
  return createHash('sha256').update(canonical(body)).digest('base64url')
}

/** JSON with sorted keys, so that the order of fields in a body does not matter. */
function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  )
}
