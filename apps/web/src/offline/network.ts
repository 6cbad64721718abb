/** Whether the service answered the last time that it was asked. A browser that says "online" proves nothing. */
let silentSince: number | null = null
let probing: ReturnType<typeof setTimeout> | undefined
const listeners = new Set<() => void>()

const probeEveryMs = 5_000
const probeAddress = '/api/v1/health'

export function isSilent(): boolean {
  return silentSince !== null
}

/** The service answered, whatever it said. */
export function noteAnswer(): void {
  clearTimeout(probing)
  probing = undefined
  if (silentSince === null) return
  silentSince = null
  tell()
}

/** Nobody answered; from now on the service is asked every few seconds whether it is back. */
export function noteSilence(): void {
  probing ??= setTimeout(() => void probe(), probeEveryMs)
  if (silentSince !== null) return
  silentSince = Date.now()
  tell()
}

/** Asks the service whether it answers. */
export async function probe(): Promise<void> {
  clearTimeout(probing)
  probing = undefined
  try {
    await fetch(probeAddress, { cache: 'no-store', signal: AbortSignal.timeout(probeEveryMs) })
    noteAnswer()
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
