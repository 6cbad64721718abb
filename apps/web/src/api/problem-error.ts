import type { FieldFault, Problem } from '@shaftbook/contract/problem'

/** What the service refused, with the sentence to show. */
export class ProblemError extends Error {
  override readonly name = 'ProblemError'
  readonly problem: Problem

  constructor(problem: Problem) {
    super(problem.detail)
    this.problem = problem
  }

  /** The faults of fields whose path starts so, e.g. `readings.2`. */
  faultsAt(path: string): FieldFault[] {
    return (this.problem.fields ?? []).filter((fault) => fault.path === path || fault.path.startsWith(`${path}.`))
  }
}

const sentence = 'The service does not answer. What you typed is still here: check the network and try again.'

/** No answer came: the network or the service is away. */
export class NoAnswerError extends Error {
  override readonly name = 'NoAnswerError'
  constructor(cause: unknown, message = sentence) {
    super(message, { cause })
  }
}
