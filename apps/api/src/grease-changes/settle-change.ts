import type { Work } from '../meters/work.ts'
import { countGiven, findOpenChange, type OpenChange } from './grease-changes.store.ts'
import { flushDoses, planWith } from './change-plans.ts'

/**
 * Brings a position's change-over up to date after grease went in, was corrected or withdrawn: counts the flushing doses that
 * are left, and finishes it with the last of them, or with a first fill of the new grease. R-CHG.
 */
export async function settleChange(work: Work, positionId: string): Promise<void> {
  const change = await findOpenChange(work.tx, positionId)
  if (!change || change.state === 'lab') return
  const { doses, fills } = await countGiven(work.tx, positionId, change.toGreaseId, change.stateSince)
  if (fills > 0) return await finishChange(work, change, 'The bearing was filled anew')
  if (change.state !== 'flush') return
  const dosesLeft = Math.max(0, flushDoses - doses)
  if (dosesLeft === 0) return await finishChange(work, change, `${flushDoses} flushing doses were given`)
  await setChange(work, change.id, { dosesLeft })
}

/** Ends a change-over: the new grease is given at its usual interval from now on. */
export async function finishChange(work: Work, change: OpenChange, note: string): Promise<void> {
  if (change.state === 'flush') {
    const reason = `Changed over from ${change.fromName} to ${change.toName}`
    await planWith(work, change.planBeforeId, change.toGreaseId, { flushing: false, reason })
  }
  await setChange(work, change.id, {
    state: 'finished',
    dosesLeft: null,
    stateSince: work.now,
    endedAt: work.now,
    endedBy: work.personId,
    note,
  })
}

export interface ChangeColumns {
  readonly state?: string
  readonly dosesLeft?: number | null
  readonly stateSince?: Date
  readonly endedAt?: Date
  readonly endedBy?: string
  readonly note?: string
}

export async function setChange({ tx }: Work, id: string, data: ChangeColumns): Promise<void> {
  const { siteId } = tx.scope
  await tx.prisma.greaseChange.update({ where: { siteId_id: { siteId, id } }, data })
}
