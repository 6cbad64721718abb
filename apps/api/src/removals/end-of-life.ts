import type { NewRemoval } from '@shaftbook/contract/removals'
import { failureModeByClause } from '@shaftbook/standards/failure-modes'
import { fieldError } from '../domain-error.ts'

/** Why and how a bearing left, as a person told it. */
export type End = Pick<NewRemoval, 'endKind' | 'modeClause' | 'cause' | 'detection' | 'evidence' | 'observer'>

/** Refuses a failure mode where nothing failed, and a clause that ISO 15243 does not have. R-CENS. */
export function checkEnd({ endKind, modeClause }: End, path = ''): void {
  if (modeClause === null) return
  if (endKind !== 'failed') {
    const message = 'Only a bearing that failed has a failure mode: leave the mode empty, or say that it failed.'
    throw fieldError('not-allowed-here', `${path}modeClause`, message)
  }
  const mode = failureModeByClause(modeClause)
  if (!mode.found) {
    throw fieldError(
      'not-allowed-here',
      `${path}modeClause`,
      `${mode.reason} Choose a mode from the tree, or leave it empty.`,
    )
  }
}

/** The term of a clause of ISO 15243, where one was given. */
export function modeTerm(modeClause: string | null): string | null {
  if (modeClause === null) return null
  const mode = failureModeByClause(modeClause)
  return mode.found ? mode.row.term : null
}
