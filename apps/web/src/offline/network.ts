/** Whether the service answered the last time that it was asked. A browser that says "online" proves nothing. */
let silentSince: number | null = null
let probing: ReturnType<typeof setTimeout> | undefined
const listeners = new Set<() => void>()

/** An answer that took longer says that the network is too weak to read by, as silence does. */
export const patienceMs = 4_000
const probeEveryMs = 5_000
const longestPauseMs = 300_000
/** A network that fell silent again within this time after it was back is asked less and less often. */
const steadyMs = 60_000
let probePauseMs = probeEveryMs
let backSince = -Infinity
const probeAddress = '/api/v1/health'

export function isSilent(): boolean {
  return silentSince !== null
}

/** The service answered, whatever it said, to what was asked at this moment. A late answer ends no silence. */
export function noteAnswer(askedAtMs: number): void {
  if (silentSince === null) return
  if (performance.now() - askedAtMs > patienceMs) return
  clearTimeout(probing)
  probing = undefined
  silentSince = null
  backSince = performance.now()
  tell()
}

/** Nobody answered; from now on the service is asked every few seconds whether it is back. */
export function noteSilence(): void {
  if (silentSince === null) probePauseMs = pauseAfter(performance.now() - backSince, probePauseMs)
  probing ??= setTimeout(() => void probe(), probePauseMs)
  if (silentSince !== null) return
  silentSince = Date.now()
  tell()
}

/** The pause before the next question, in ms: short after a network that held, twice the last one after one that did not. */
export function pauseAfter(heldMs: number, lastPauseMs: number): number {
  return heldMs > steadyMs ? probeEveryMs : Math.min(2 * lastPauseMs, longestPauseMs)
}

/** Asks the service whether it answers. */
export async function probe(): Promise<void> {
  clearTimeout(probing)
  probing = undefined
  try {
    const askedAtMs = performance.now()
    await fetch(probeAddress, { cache: 'no-store', signal: AbortSignal.timeout(patienceMs) })
    noteAnswer(askedAtMs)
  } catch {
    noteSilence()
  }
}

/** Calls back whenever the answer of `isSilent` may have changed. */
export function onNetworkChanged(changed: () => void): () => void {
  listeners.add(changed)
  return () => listeners.delete(changed)
}

function tell(): void {
  for (const changed of listeners) changed()
}

/** Asks again whenever the browser says that the network changed; its word alone is not taken. Once, at the start. */
export function watchNetwork(): void {
  const ask = (): void => void probe()
  globalThis.addEventListener('online', ask)
  globalThis.addEventListener('offline', ask)
  if (!navigator.onLine) ask()
}
