import { problemCodes, type FieldFault, type ProblemCode } from '@shaftbook/contract/problem'

/** A refusal that a person can act on: its code gives the HTTP status, its message is the sentence that is shown. */
export class DomainError extends Error {
  override readonly name = 'DomainError'
  readonly code: ProblemCode
  readonly fields: FieldFault[]

  constructor(code: ProblemCode, message: string, fields: FieldFault[] = [], options?: ErrorOptions) {
    super(message, options)
    this.code = code
    this.fields = fields
  }

  get status(): number {
    return problemCodes[this.code][0]
  }
}

/** Refuses with one field at fault, whose message is the sentence too. */
export function fieldError(code: ProblemCode, path: string, message: string, options?: ErrorOptions): DomainError {
  return new DomainError(code, message, [{ path, message }], options)
}

/** The record is not there, or belongs to another site: to the asker both are the same. */
export function notFound(noun: string, path = 'id'): DomainError {
  return fieldError('not-found', path, `There is no such ${noun} at this site.`)
}

/** Somebody else's change came in between; nothing of his is overwritten. */
export function versionStale(noun: string, sentVersion: number): DomainError {
  return new DomainError(
    'version-stale',
    `Somebody changed this ${noun} since you read it (you sent version ${sentVersion}): read it again, look at what changed, then enter your change once more.`,
  )
}
