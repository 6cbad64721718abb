import type { NewObservation, Observation } from '@shaftbook/contract/observations'
import { refreshPositions } from '../bookkeeping/refresh.ts'
import type { Context } from '../context.ts'
import { receive } from '../db/receipts.ts'
import { DomainError, notFound } from '../domain-error.ts'
import { holdPlace } from '../meters/place.ts'
import { doWork, momentOf, type Work, type Worker } from '../meters/work.ts'
import { findObservation } from './observations.store.ts'

/** Signs what was observed: it lands at its own time, and the flags of the position follow at once. */
export function createObservation(context: Context, worker: Worker, body: NewObservation): Promise<Observation> {
  return doWork(context, worker, async (work) => {
    if ((await receive(work.tx, 'create-observation', body.id, body)) === 'new') await signObservation(work, body)
    return await observation(work, body.id)
  })
}

/** Signs an observation within an act, and brings up to date what hangs on it. */
export async function signObservation(work: Work, body: NewObservation): Promise<void> {
  const { tx, now, personId } = work
  await holdPlace(tx, body.positionId)
  const observedAt = momentOf(work, body.observedAt, 'observedAt')
  const { siteId } = tx.scope
  await tx.prisma.observation.create({ data: { ...body, siteId, observedAt, signedAt: now, signedBy: personId } })
  await refreshPositions(tx, [body.positionId], now, 'observed')
}

/** Takes an observation back: it stays to be read, and counts no more. */
export function withdrawObservation(
  context: Context,
  worker: Worker,
  id: string,
  reason: string,
): Promise<Observation> {
  return doWork(context, worker, async (work) => {
    const { tx, now, personId } = work
    const { positionId, tag } = await observation(work, id)
    await holdPlace(tx, positionId)
    const { count } = await tx.prisma.observation.updateMany({
      where: { siteId: tx.scope.siteId, id, withdrawnAt: null },
      data: { withdrawnAt: now, withdrawnBy: personId, withdrawnReason: reason },
    })
    if (count === 0) throw new DomainError('already-withdrawn', `This observation of ${tag} was withdrawn already.`)
    await refreshPositions(tx, [positionId], now, 'observation withdrawn')
    return await observation(work, id)
  })
}

async function observation({ tx }: Work, id: string): Promise<Observation> {
  const found = await findObservation(tx.sql, tx.scope.siteId, id)
  if (!found) throw notFound('observation')
  return found
}
