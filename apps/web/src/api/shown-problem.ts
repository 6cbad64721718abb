import type { Problem } from '@shaftbook/contract/problem'
import { NoAnswerError, ProblemError } from './problem-error.ts'

/** Any error as the problem that the interface kit shows. */
export function shownProblem(
  error: unknown,
): Pick<Problem, 'title' | 'detail'> & Partial<Problem> & { calm?: boolean } {
  if (error instanceof ProblemError) return error.problem
  const detail = error instanceof Error ? error.message : String(error)
  // without a network it is no fault, and the frame says so already
  return error instanceof NoAnswerError
    ? { title: 'No answer', detail, calm: true }
    : { title: 'This did not work', detail }
}
