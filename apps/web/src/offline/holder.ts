import { deviceBook, openDeviceBook, type HolderRow } from './device-book.ts'

/** The person whose records this device opens now. */
export type Holder = Pick<HolderRow, 'personId' | 'name' | 'key'>

let held: Holder | null | undefined

/** Who holds the device's key, or null: nothing sealed can be read or kept. */
export async function findHolder(): Promise<Holder | null> {
  if (held !== undefined) return held
  if (!(await openDeviceBook())) return null
  const row = await deviceBook.slots.get('holder')
  held = row?.slot === 'holder' ? row : null
  return held
}

/** The same past what this tab remembers: another tab may have signed in or out just now. */
export function readHolder(): Promise<Holder | null> {
  held = undefined
  return findHolder()
}

/** The same without waiting: undefined before it was looked up. */
export function holderNow(): Holder | null | undefined {
  return held
}

/** Puts the key of the person who signed in on the device; the key and the downloads of anybody before go. */
export async function takeKey(holder: Holder): Promise<void> {
  if (!(await openDeviceBook())) return
  await deviceBook.transaction('rw', deviceBook.slots, deviceBook.replies, deviceBook.parts, async () => {
    const before = await deviceBook.slots.get('holder')
    if (before?.slot === 'holder' && before.personId !== holder.personId) await clearDownloads()
    await deviceBook.slots.put({ slot: 'holder', ...holder })
  })
  held = holder
  tellOtherTabs()
}

/** Takes the key and everything downloaded off the device. What is sealed stays, closed to everybody else. */
export async function eraseKey(options: { owesSignOut: boolean }): Promise<void> {
  held = null
  if (!(await openDeviceBook())) return
  await deviceBook.transaction('rw', deviceBook.slots, deviceBook.replies, deviceBook.parts, async () => {
    await deviceBook.slots.delete('holder')
    await clearDownloads()
    if (options.owesSignOut) await deviceBook.slots.put({ slot: 'sign-out-owed' })
  })
  tellOtherTabs()
}

/** Within a transaction. */
async function clearDownloads(): Promise<void> {
  await deviceBook.replies.clear()
  await deviceBook.parts.clear()
}

/** True where a session was left without a network: it goes on until the service is told. */
export async function owesSignOut(): Promise<boolean> {
  return (await openDeviceBook()) && (await deviceBook.slots.get('sign-out-owed')) !== undefined
}

export async function signOutIsPaid(): Promise<void> {
  if (await openDeviceBook()) await deviceBook.slots.delete('sign-out-owed')
}

const tabs = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('shaftbook-holder')

function tellOtherTabs(): void {
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a channel of this origin, no window
  tabs?.postMessage('changed')
}

/** Calls back when somebody signs in or out in another tab; the key in memory is forgotten first. */
export function onHolderChanged(changed: () => void): void {
  tabs?.addEventListener('message', () => {
    held = undefined
    changed()
  })
}
