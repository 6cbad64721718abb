import { useCallback, useEffect, useRef } from 'react'

/**
 * Keeps the newest value right after it is on the screen, so that a key press never waits for the sealing of the sheet;
 * before the page is hidden or left it is kept at once.
 */
export function useKeptAfterPaint<T>(keep: (value: T) => void): (value: T) => void {
  const newest = useRef<{ value: T } | null>(null)
  const latestKeep = useRef(keep)
  useEffect(() => {
    latestKeep.current = keep
  })
  const flush = useCallback(() => {
    const held = newest.current
    newest.current = null
    if (held) latestKeep.current(held.value)
  }, [])
  useEffect(() => {
    document.addEventListener('visibilitychange', flush)
    window.addEventListener('pagehide', flush)
    return () => {
      document.removeEventListener('visibilitychange', flush)
      window.removeEventListener('pagehide', flush)
      flush()
    }
  }, [flush])
  return useCallback(
    (value: T) => {
      const isFirst = newest.current === null
      newest.current = { value }
      if (isFirst) requestAnimationFrame(() => setTimeout(flush))
    },
    [flush],
  )
}
