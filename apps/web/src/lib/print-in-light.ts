import { useEffect } from 'react'

const scheme = 'data-mantine-color-scheme'

/** Paper is white: while the page prints, it shows the light theme whatever the person has chosen. */
export function usePrintInLight(): void {
  useEffect(() => {
    const root = document.documentElement
    let chosen: string | null = null
    const before = (): void => {
      chosen = root.getAttribute(scheme)
      root.setAttribute(scheme, 'light')
    }
    const after = (): void => {
      if (chosen !== null) root.setAttribute(scheme, chosen)
    }
    window.addEventListener('beforeprint', before)
    window.addEventListener('afterprint', after)
    return () => {
      window.removeEventListener('beforeprint', before)
      window.removeEventListener('afterprint', after)
    }
  }, [])
}
