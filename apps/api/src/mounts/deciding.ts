import { needsReason } from '@shaftbook/contract/judge-mount'
import type { NewMountDecision } from '@shaftbook/contract/mount-decisions'
import type { MountRecord } from '@shaftbook/contract/mounts'
import { plantDay } from '@shaftbook/contract/time-zone'
import { refreshPositions } from '../bookkeeping/refresh.ts'
import type { Context } from '../context.ts'
import { receive } from '../db/receipts.ts'
import { DomainError, fieldError } from '../domain-error.ts'
import { checkPutOffUntil } from '../flags/flags.service.ts'
import { dayOf, doWork, type Work, type Worker } from '../meters/work.ts'
import { addDecision, putOffMountFlags } from './decisions.store.ts'
import { findStay } from './fitting.store.ts'
import { holdPlaceOf, recordOf } from './mounts.service.ts'

/**
 * Writes down what the engineer decided on a mount that is not proven inside its limits. Its verdict stays; its flags are
 * put off until the day that was given, or come back where the mount is to be done again.
 */
export function decideMount(
  context: Context,
  worker: Worker,
  mountRecordId: string,
  body: NewMountDecision,
): Promise<MountRecord> {
  return doWork(context, worker, async (work) => {
    const request = { ...body, mountRecordId }
    if ((await receive(work.tx, 'decide-mount-record', body.id, request)) === 'repeat')
      return await recordOf(work, mountRecordId)
    const place = await holdPlaceOf(work, mountRecordId)
    const fitmentId = await decidable(work, await recordOf(work, mountRecordId))
    const putOff = putOffOf(work, body)
    await addDecision(work.tx, { ...body, mountRecordId, decidedAt: work.now, decidedBy: work.personId })
    await putOffMountFlags(work.tx, fitmentId, putOff)
    await refreshPositions(work.tx, [place.positionId], work.now, 'mount decided on')
    return await recordOf(work, mountRecordId)
  })
}

/** The stay of a mount that waits for a decision: signed, the latest of its mount, still in, short of its limits. */
async function decidable(work: Work, record: MountRecord): Promise<string> {
  if (record.correctedById !== null) {
    throw fieldError('already-corrected', 'id', 'This record was corrected already: decide on the latest one.')
  }
  if (record.fitmentId === null) {
    throw new DomainError('not-allowed-here', 'This is a draft: it is decided on once it is signed.')
  }
  if (!needsReason(record.judgement)) {
    throw new DomainError('not-allowed-here', 'This mount is inside its limits: there is nothing to decide.')
  }
  const { removedAt } = await findStay(work.tx, record.fitmentId)
  if (removedAt) {
    const message = `This bearing left ${record.tag} on ${dayOf(work, removedAt)}: there is nothing left to decide.`
    throw new DomainError('not-allowed-here', message)
  }
  return record.fitmentId
}

function putOffOf(work: Work, { kind, until, reason }: NewMountDecision): { until: string; reason: string } | null {
  if (kind === 'do-again') {
    if (until === null) return null
    throw fieldError(
      'not-allowed-here',
      'until',
      'A mount that is done again is not accepted until a day: leave it out.',
    )
  }
  if (until === null)
    throw fieldError('request-invalid', 'until', 'Say until which day the mount is accepted as it is.')
  checkPutOffUntil(until, plantDay(work.now, work.timeZone))
  return { until, reason }
}
