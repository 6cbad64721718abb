import { liveQuery } from 'dexie'
import { useEffect, useState, useSyncExternalStore } from 'react'
import { openDeviceBook } from './device-book.ts'
import { findHolder } from './holder.ts'
import { isSilent, onNetworkChanged } from './network.ts'
import { itemsOf, type OutboxItem } from './outbox-rows.ts'
import { onSenderPhase, senderPhase, type SenderPhase } from './sender.ts'

/** What a reading of the device's book says, again whenever it changes, in any tab. Undefined until it is read. */
export function useDeviceBook<T>(read: () => Promise<T>, about: string): T | undefined {
  const [known, setKnown] = useState<{ about: string; value: T }>()
  useEffect(() => {
    let stop: () => void = () => undefined
    let left = false
    const follow = async (): Promise<void> => {
      if (!(await openDeviceBook()) || left) return
      const subscription = liveQuery(read).subscribe((value) => setKnown({ about, value }))
      stop = () => subscription.unsubscribe()
    }
    void follow()
    return () => {
      left = true
      stop()
    }
    // `about` names what is read: the function itself is another one at every drawing
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [about])
  return known?.about === about ? known.value : undefined
}

/** This person's outbox, in the order of writing. */
export function useOutbox(personId: string): OutboxItem[] {
  const items = useDeviceBook(async () => {
    const holder = await findHolder()
    return holder?.personId === personId ? await itemsOf(holder) : []
  }, `outbox/${personId}`)
  return items ?? []
}

export interface DeviceState {
  /** The service did not answer the last time. */
  silent: boolean
  phase: SenderPhase
}

/** Whether the service answers, and what the sender does. */
export function useDeviceState(): DeviceState {
  const silent = useSyncExternalStore(onNetworkChanged, isSilent)
  const phase = useSyncExternalStore(onSenderPhase, senderPhase)
  return { silent, phase }
}
