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

export interface Stay {
  readonly fittedAt: Date
  readonly removedAt: Date
  readonly startRunHours: number | null
  readonly endRunHours: number | null
  /** What the register says that the machine runs. */
  readonly hoursPerDay: number
}

/**
 * Running hours (h) of a bearing's stay: the difference of the meter, or else days times the machine's usual hours a day,
 * marked as an estimate. R-HOURS.
 */
export function lifeHours(stay: Stay): { runHours: number; hoursSource: 'meter' | 'estimate' } {
  const { startRunHours, endRunHours } = stay
  if (startRunHours !== null && endRunHours !== null && endRunHours >= startRunHours) {
    return { runHours: Math.round((endRunHours - startRunHours) * 1e6) / 1e6, hoursSource: 'meter' }
  }
  const days = (stay.removedAt.getTime() - stay.fittedAt.getTime()) / 86_400_000
  return { runHours: Math.round(days * stay.hoursPerDay), hoursSource: 'estimate' }
}
