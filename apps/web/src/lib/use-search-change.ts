import { useNavigate } from '@tanstack/react-router'
import { useCallback } from 'react'

type Change = Record<string, string | undefined>

/** Changes what stands behind the question mark of the address; undefined takes a name away. The history keeps one entry. */
export function useSearchChange(): (change: Change) => void {
  const navigate = useNavigate()
  return useCallback(
    (change: Change) => {
      void navigate({ to: '.', search: (old: Change) => ({ ...old, ...change }), replace: true, resetScroll: false })
    },
    [navigate],
  )
}
