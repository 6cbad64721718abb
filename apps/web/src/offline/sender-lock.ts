import { deviceBook, openDeviceBook, type LeaseRow } from './device-book.ts'

const lockName = 'shaftbook-sender'
const leaseMs = 150_000
const askAgainMs = 500
const tab = Math.random().toString(36).slice(2)

/** Does the work while no other tab of this browser sends. `renew` says that it still goes on. */
export async function withSenderLock<T>(work: (renew: () => Promise<void>) => Promise<T>): Promise<T> {
  // a page without a secure context has no locks: a lease in the device's book does it there
  const { locks } = navigator as { locks?: LockManager }
  if (locks) return await locks.request(lockName, () => work(() => Promise.resolve()))
  if (!(await openDeviceBook())) return await work(() => Promise.resolve())
  while (!(await takeLease())) await new Promise((resolve) => setTimeout(resolve, askAgainMs))
  try {
    return await work(async () => void (await takeLease()))
  } finally {
    await dropLease()
  }
}

/** False once it ran out, and where it was given by a clock that was put back since: it would hold for years. */
export function leaseHolds({ untilMs }: Pick<LeaseRow, 'untilMs'>, nowMs: number): boolean {
  return untilMs > nowMs && untilMs <= nowMs + leaseMs
}

function takeLease(): Promise<boolean> {
  return deviceBook.transaction('rw', deviceBook.slots, async () => {
    const lease = await deviceBook.slots.get('sender')
    if (lease?.slot === 'sender' && lease.tab !== tab && leaseHolds(lease, Date.now())) return false
    await deviceBook.slots.put({ slot: 'sender', tab, untilMs: Date.now() + leaseMs })
    return true
  })
}

function dropLease(): Promise<void> {
  return deviceBook.transaction('rw', deviceBook.slots, async () => {
    const lease = await deviceBook.slots.get('sender')
    if (lease?.slot === 'sender' && lease.tab === tab) await deviceBook.slots.delete('sender')
  })
}
