import { ProblemError } from '../../api/problem-error.ts'

/** The faults that the service found, by field. */
export function faultsOf(error: Error): ReadonlyMap<string, string> {
  if (!(error instanceof ProblemError)) return new Map()
  return new Map((error.problem.fields ?? []).map(({ path, message }) => [path, message]))
}

/** Whether the sentence of a refusal stands at a field already, word for word. */
export function saidAtField(error: Error): boolean {
  return [...faultsOf(error).values()].includes(error.message)
}
