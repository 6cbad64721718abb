import { useEffect } from 'react'

let forms = 0
const listeners = new Set<() => void>()

function change(by: 1 | -1): void {
  forms += by
  for (const changed of listeners) changed()
}

/** Whether a form on the screen holds something that is typed and not sent. */
export function hasUnsent(): boolean {
  return forms > 0
}

export function onUnsentChanged(changed: () => void): () => void {
  listeners.add(changed)
  return () => listeners.delete(changed)
}

/** Says of a form that it holds something unsent, while `when` is true. */
export function useUnsent(when: boolean): void {
  useEffect(() => {
    if (!when) return undefined
    change(1)
    return () => change(-1)
  }, [when])
}
