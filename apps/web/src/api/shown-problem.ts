import type { Problem } from '@shaftbook/contract/problem'
import { NoAnswerError, ProblemError } from './problem-error.ts'

/** Any error as the problem that the interface kit shows. */
export function shownProblem(error: unknown): Pick<Problem, 'title' | 'detail'> & Partial<Problem> {
  if (error instanceof ProblemError) return error.problem
  const detail = error instanceof Error ? error.message : String(error)
  return { title: error instanceof NoAnswerError ? 'No answer' : 'This did not work', detail }
}
