import type { QueryClient } from '@tanstack/react-query'
import { invalidateSite } from '../api/invalidate-site.ts'
import { findHolder, onHolderChanged } from '../offline/holder.ts'
import { isSilent, onNetworkChanged, watchNetwork } from '../offline/network.ts'
import { startSender } from '../offline/sender.ts'
import { sessionQuery } from './session-queries.ts'

/** Starts what runs for the whole life of a tab: the sender, the watch on the network, and on who is signed in elsewhere. */
export function followDevice(client: QueryClient): void {
  watchNetwork()
  startSender((site) => void invalidateSite(client, site))
  onNetworkChanged(() => {
    if (!isSilent()) void client.invalidateQueries()
  })
  onHolderChanged(() => void leaveOnOtherHolder(client))
}

/** Somebody signed out or in in another tab: what this tab shows is not for that person. */
async function leaveOnOtherHolder(client: QueryClient): Promise<void> {
  const me = client.getQueryData(sessionQuery.queryKey)
  const holder = await findHolder()
  if (!me || holder?.personId === me.id) return
  client.clear()
  globalThis.location.reload()
}
