import { useNavigate, useSearch } from '@tanstack/react-router'
import { useCallback } from 'react'
import type { SheetScope, StepKey } from './sheet-steps.ts'

/** The step on the screen. It stands in the address, so that back, reload and a link lead to it. */
export function useStep({ steps }: Pick<SheetScope, 'steps'>): { step: StepKey; go: (step: StepKey) => void } {
  const { step: asked }: { step?: StepKey } = useSearch({ strict: false })
  const navigate = useNavigate()
  const go = useCallback(
    (step: StepKey) => void navigate({ to: '.', search: (old: object) => ({ ...old, step }) }),
    [navigate],
  )
  const step = asked && steps.includes(asked) ? asked : (steps[0] ?? 'sign')
  return { step, go }
}
