import type { Workbox } from 'workbox-window'

const tabLock = 'shaftbook-tab'
const askEveryMs = 3_600_000

let worker: Workbox | undefined
let waiting = false
const listeners = new Set<() => void>()

/** A newer version lies ready on this device. */
export function newVersionWaits(): boolean {
  return waiting
}

export function onNewVersion(changed: () => void): () => void {
  listeners.add(changed)
  return () => listeners.delete(changed)
}

/** Lays the pages down on this device once the first one stands, and looks for newer ones. Not where the address is not secure. */
export function watchNewVersion(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return
  // held as long as the tab lives, so that others know that it is there
  void navigator.locks.request(tabLock, { mode: 'shared' }, () => new Promise(() => undefined))
  if (document.readyState === 'complete') void install()
  else globalThis.addEventListener('load', () => void install(), { once: true })
}

async function install(): Promise<void> {
  const { Workbox } = await import('workbox-window')
  const workbox = new Workbox('/sw.js', { scope: '/' })
  worker = workbox
  workbox.addEventListener('waiting', () => {
    waiting = true
    for (const changed of listeners) changed()
  })
  await workbox.register()
  setInterval(() => void workbox.update().catch(() => undefined), askEveryMs)
}

/**
 * Takes the newer version: this tab starts afresh with it. False where another tab is open: its pages are of the version
 * before and would miss their files.
 */
export async function takeNewVersion(): Promise<boolean> {
  const { held = [] } = await navigator.locks.query()
  if (held.filter(({ name }) => name === tabLock).length > 1) return false
  worker?.addEventListener('controlling', () => globalThis.location.reload())
  worker?.messageSkipWaiting()
  return true
}
