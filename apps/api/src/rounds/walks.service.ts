import * as contract from '@shaftbook/contract/round-walks'
import type { NewRoundWalk, NewWalkStop, RoundWalk, WalkStop } from '@shaftbook/contract/round-walks'
import type { GreaseTask } from '@shaftbook/contract/grease-plans'
import { v7 as newId } from 'uuid'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { receive } from '../db/receipts.ts'
import { DomainError, fieldError, notFound } from '../domain-error.ts'
import { signGreasing } from '../greasing/greasing.service.ts'
import { holdPlace } from '../meters/place.ts'
import { doWork, momentOf, type Work, type Worker } from '../meters/work.ts'
import { signObservation } from '../observations/observations.service.ts'
import { findRound } from './rounds.store.ts'
import { checkOverdose, doseOf, type StopGreasing } from './stop-dose.ts'
import * as store from './walks.store.ts'

/** Begins a walk; it keeps the stops of the round as they were. */
export function startWalk(context: Context, worker: Worker, body: NewRoundWalk): Promise<RoundWalk> {
  return doWork(context, worker, async (work) => {
    const { tx, personId } = work
    if ((await receive(tx, contract.startRoundWalk.name, body.id, body)) === 'new') {
      if (!(await findRound(tx.sql, tx.scope.siteId, body.roundId))) throw notFound('round', 'roundId')
      await checkKnown(work, body)
      const startedAt = momentOf(work, body.startedAt, 'startedAt')
      await store.insertWalk(tx, { ...body, startedAt, startedBy: personId })
    }
    return await walkOf(work, body.id)
  })
}

/** Signs what was done at a stop; what was done becomes a greasing, in the same act. */
export function recordStop(context: Context, worker: Worker, walkId: string, body: NewWalkStop): Promise<WalkStop> {
  return doWork(context, worker, async (work) => {
    const { tx } = work
    if ((await receive(tx, contract.recordWalkStop.name, body.id, { ...body, walkId })) === 'new') {
      await addResult(work, walkId, body)
    }
    const result = await store.findResult(tx.sql, tx.scope.siteId, body.id)
    if (!result) throw notFound('result')
    return result
  })
}

/** Ends a walk; the first end stands. */
export function finishWalk(
  context: Context,
  worker: Worker,
  walkId: string,
  body: z.output<typeof contract.finishRoundWalk.body>,
): Promise<RoundWalk> {
  return doWork(context, worker, async (work) => {
    if ((await receive(work.tx, contract.finishRoundWalk.name, body.id, { ...body, walkId })) === 'new') {
      const endedAt = momentOf(work, body.endedAt, 'endedAt')
      await store.endWalk(work.tx, walkId, { endedAt, endedBy: work.personId, note: body.note })
    }
    return await walkOf(work, walkId)
  })
}

async function addResult(work: Work, walkId: string, body: NewWalkStop): Promise<void> {
  const { tx } = work
  const stop = await store.findStop(tx, walkId, body.stopId)
  if (stop === null) throw notFound('walk of a round')
  if (stop === undefined) throw notFound('stop of this walk', 'stopId')
  const { positionId, task } = stop
  checkWhole(body)
  await holdPlace(tx, positionId)
  if (await store.hasResult(tx, walkId, body.stopId)) {
    const message = 'What was done at this stop of the walk is signed already: correct that record where it is wrong.'
    throw fieldError('stop-already-done', 'stopId', message)
  }
  const doneAt = momentOf(work, body.doneAt, 'doneAt')
  if (body.greasing) await signWork(work, { walkId, positionId, task, doneAt }, body, body.greasing)
  const { greasing, ...entered } = body
  const greasingId = greasing?.id ?? null
  await store.insertResult(tx, {
    ...entered,
    walkId,
    positionId,
    task,
    doneAt,
    greasingId,
    signedAt: work.now,
    signedBy: work.personId,
  })
  await observeAt(work, positionId, body)
}

/** What was measured or seen at the stop stands among the observations of the position: a rise raises its flag. */
async function observeAt(work: Work, positionId: string, body: NewWalkStop): Promise<void> {
  const { temperatureC, oldGrease, reliefClosed, note } = body
  if (temperatureC === null && oldGrease === null && reliefClosed === null) return
  const oldGreaseSeen = oldGrease === null ? null : oldGrease !== 'none'
  await signObservation(work, {
    id: newId(),
    positionId,
    greasingId: body.greasing?.id ?? null,
    observedAt: body.doneAt,
    temperatureC,
    vibrationMmS: null,
    zone: null,
    reliefClosed,
    oldGreaseSeen,
    note,
  })
}

/** What is said of the stop goes together: a reason where it is skipped, a record of the work where it is done. */
function checkWhole({ outcome, reason, greasing }: NewWalkStop): void {
  if (outcome === 'skipped' && reason.length < 3) {
    throw fieldError('reason-missing', 'reason', 'Say in a few words why this stop is skipped.')
  }
  if (outcome === 'done' && greasing === null) {
    throw fieldError(
      'not-allowed-here',
      'greasing',
      'What is done at a stop is signed with it: enter the dose where grease goes in.',
    )
  }
  if (outcome !== 'done' && greasing !== null) {
    throw fieldError(
      'not-allowed-here',
      'greasing',
      'Work is signed only at a stop that is done: say done, or take the dose out.',
    )
  }
}

async function signWork(
  work: Work,
  at: { walkId: string; positionId: string; task: GreaseTask; doneAt: Date },
  body: NewWalkStop,
  greasing: StopGreasing,
): Promise<void> {
  const { id, greaseId, gunId, strokes, gramsPerStroke, meterShowsHours } = greasing
  const doseG = await doseOf(work, at.task, greasing, at.doneAt)
  const by = { walkId: at.walkId, stopId: body.stopId, gunId, strokes, gramsPerStroke }
  const note = [body.extraReason && `Extra dose: ${body.extraReason}`, body.note].filter(Boolean).join('\n')
  const { positionId, task } = at
  const entry = { id, positionId, task, greasedAt: body.doneAt, greaseId, doseG, meterShowsHours, note }
  const row = await inGreasing(() => signGreasing(work, { ...entry, kind: 'regreasing' }, by))
  checkOverdose(body, doseG, row.plannedDoseG)
}

/** What is at fault in the greasing stands below `greasing` in the request. */
async function inGreasing<T>(sign: () => Promise<T>): Promise<T> {
  try {
    return await sign()
  } catch (error) {
    if (!(error instanceof DomainError)) throw error
    const fields = error.fields.map((field) => ({ ...field, path: `greasing.${field.path}` }))
    throw new DomainError(error.code, error.message, fields, { cause: error })
  }
}

/** Every stop names a position of this site; one that was retired meanwhile is still a stop of the walk. */
async function checkKnown(work: Work, { stops }: NewRoundWalk): Promise<void> {
  const known = await store.knownPositions(
    work.tx,
    stops.map(({ positionId }) => positionId),
  )
  const index = stops.findIndex(({ positionId }) => !known.has(positionId))
  if (index !== -1) throw notFound('position', `stops.${index}.positionId`)
}

async function walkOf(work: Work, id: string): Promise<RoundWalk> {
  const found = await store.findWalk(work.tx.sql, work.tx.scope.siteId, id)
  if (!found) throw notFound('walk of a round')
  return found
}
