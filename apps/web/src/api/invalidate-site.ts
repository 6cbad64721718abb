import type { QueryClient } from '@tanstack/react-query'

/** After a write: everything read of this site is read again. Keys of a site's queries begin with [feature, site code]. */
export async function invalidateSite(client: QueryClient, site: string): Promise<void> {
  await client.invalidateQueries({ predicate: ({ queryKey }) => queryKey[1] === site })
}
