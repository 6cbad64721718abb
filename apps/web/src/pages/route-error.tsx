import { useQueryErrorResetBoundary } from '@tanstack/react-query'
import { useRouter, type ErrorComponentProps } from '@tanstack/react-router'
import { shownProblem } from '../api/shown-problem.ts'
import { ErrorState } from '../ui/error-state.tsx'

/** A page could not be shown: what happened, and the way to try again. */
export function RouteError({ error, reset }: ErrorComponentProps) {
  const router = useRouter()
  const queries = useQueryErrorResetBoundary()
  const retry = (): void => {
    queries.reset()
    reset()
    void router.invalidate()
  }
  return <ErrorState heading="h1" problem={shownProblem(error)} onRetry={retry} />
}
