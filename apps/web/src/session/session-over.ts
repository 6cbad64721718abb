import type { QueryClient } from '@tanstack/react-query'
import type { AnyRouter } from '@tanstack/react-router'
import { ProblemError } from '../api/problem-error.ts'
import { paths } from '../paths.ts'

/** Where a page can no longer read because the session is over, leads to the way in, and back to the page afterwards. */
export function leadToSignIn(error: Error, router: AnyRouter, client: QueryClient): void {
  const over = error instanceof ProblemError && error.problem.code === 'not-signed-in'
  const { pathname, href } = router.state.location
  if (!over || pathname === paths.signIn) return
  client.clear()
  void router.navigate({ to: paths.signIn, search: { next: href } })
}
