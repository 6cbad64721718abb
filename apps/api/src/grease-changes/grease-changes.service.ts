import { changeOver, type ChangeOver } from '@shaftbook/bearing/grease-change'
import { isThickener } from '@shaftbook/standards/grease-compatibility'
import type { GreaseChange, startGreaseChange } from '@shaftbook/contract/grease-changes'
import type { z } from 'zod'
import { refreshPositions } from '../bookkeeping/refresh.ts'
import type { Context } from '../context.ts'
import { receive } from '../db/receipts.ts'
import { DomainError, fieldError, notFound } from '../domain-error.ts'
import { currentPlans } from '../greasing/plans.store.ts'
import { holdPlace } from '../meters/place.ts'
import { doWork, type Work, type Worker } from '../meters/work.ts'
import { flushDoses, planWith } from './change-plans.ts'
import { countGiven, findChange, findOpenChange, type OpenChange } from './grease-changes.store.ts'
import { finishChange, setChange } from './settle-change.ts'

type Start = z.output<(typeof startGreaseChange)['body']>

/** The ways that the compatibility of two greases leaves: what must be stripped is never flushed. R-CHG. */
const waysOf: Readonly<Record<ChangeOver['verdict'], readonly Start['way'][]>> = {
  flush: ['flush', 'lab-first', 'strip'],
  'flush-and-test': ['lab-first', 'strip'],
  strip: ['strip'],
}

/** Begins to change a position over to another grease. While the lab is asked the old one stays right, then the new one is. */
export function startChange(context: Context, worker: Worker, body: Start): Promise<GreaseChange> {
  return doWork(context, worker, async (work) => {
    const { tx, now, personId } = work
    if ((await receive(tx, 'start-grease-change', body.id, body)) === 'repeat') return await change(work, body.id)
    const { positionId, tag } = await holdPlace(tx, body.positionId)
    if (await findOpenChange(tx, positionId)) {
      throw new DomainError('not-allowed-here', `${tag} is in a change-over already: finish or abandon that one first.`)
    }
    const { siteId } = tx.scope
    const plan = (await currentPlans(tx.sql, siteId, [positionId])).find(({ task }) => task === 'regrease')
    if (!plan || plan.greaseId === null) {
      throw fieldError('not-allowed-here', 'positionId', `${tag} has no plan of regreasing by gun: give it one first.`)
    }
    if (plan.greaseId === body.toGreaseId) {
      throw fieldError('not-allowed-here', 'toGreaseId', `${tag} is greased with ${plan.greaseName} already.`)
    }
    const names = await greasesOf(work, plan.greaseId, body.toGreaseId)
    checkWay(names, body.way)
    const state = body.way === 'lab-first' ? 'lab' : body.way
    await tx.prisma.greaseChange.create({
      data: {
        siteId,
        id: body.id,
        positionId,
        fromGreaseId: plan.greaseId,
        toGreaseId: body.toGreaseId,
        way: body.way,
        state,
        reason: body.reason,
        planBeforeId: plan.id,
        dosesLeft: state === 'flush' ? flushDoses : null,
        startedAt: now,
        startedBy: personId,
        stateSince: now,
      },
    })
    if (state !== 'lab') await goOver(work, await openChangeOf(work, body.id, positionId), state)
    await refreshPositions(tx, [positionId], now, 'change-over begun')
    return await change(work, body.id)
  })
}

/** Tells what the mix test said. */
export function tellLabResult(context: Context, worker: Worker, id: string, told: { mixes: boolean; note: string }) {
  return stepOf(context, worker, id, 'lab result told', async (work, open, tag) => {
    if (open.state !== 'lab') throw new DomainError('not-allowed-here', `The change-over of ${tag} waits for no lab.`)
    const state = told.mixes ? 'flush' : 'strip'
    const dosesLeft = state === 'flush' ? flushDoses : null
    await setChange(work, id, { state, dosesLeft, stateSince: work.now, note: told.note })
    await goOver(work, open, state)
  })
}

/** The bearing was stripped, cleaned and filled anew. */
export function finishStripped(context: Context, worker: Worker, id: string, note: string) {
  return stepOf(context, worker, id, 'change-over finished', async (work, open, tag) => {
    if (open.state !== 'strip') {
      const left = open.state === 'lab' ? 'it waits for the lab' : 'its flushing doses are not all given'
      throw new DomainError('not-allowed-here', `The change-over of ${tag} can't be finished: ${left}.`)
    }
    await finishChange(work, open, note)
  })
}

/** Gives a change-over up before any of the new grease went in. */
export function abandonChange(context: Context, worker: Worker, id: string, reason: string) {
  return stepOf(context, worker, id, 'change-over abandoned', async (work, open, tag, positionId) => {
    const { doses, fills } = await countGiven(work.tx, positionId, open.toGreaseId, open.startedAt)
    if (doses + fills > 0) {
      const message = `${open.toName} went into ${tag} already: the change-over has to be carried through.`
      throw new DomainError('not-allowed-here', message)
    }
    if (open.state !== 'lab') {
      const { fromGreaseId } = await change(work, id)
      const back = `The change-over to ${open.toName} was abandoned: ${reason}`
      await planWith(work, open.planBeforeId, fromGreaseId, { flushing: false, reason: back })
    }
    const ended = { endedAt: work.now, endedBy: work.personId, stateSince: work.now }
    await setChange(work, id, { state: 'abandoned', dosesLeft: null, note: reason, ...ended })
  })
}

type Step = (work: Work, open: OpenChange, tag: string, positionId: string) => Promise<void>

function stepOf(context: Context, worker: Worker, id: string, how: string, step: Step): Promise<GreaseChange> {
  return doWork(context, worker, async (work) => {
    const { positionId, tag } = await change(work, id)
    await holdPlace(work.tx, positionId)
    const open = await findOpenChange(work.tx, positionId)
    if (open?.id !== id) throw new DomainError('not-allowed-here', `This change-over of ${tag} has ended already.`)
    await step(work, open, tag, positionId)
    await refreshPositions(work.tx, [positionId], work.now, how)
    return await change(work, id)
  })
}

/** From now on the new grease is the right one. */
async function goOver(work: Work, open: OpenChange, state: 'strip' | 'flush'): Promise<void> {
  const reason = `Change-over from ${open.fromName} to ${open.toName}`
  await planWith(work, open.planBeforeId, open.toGreaseId, { flushing: state === 'flush', reason })
}

interface NamedGrease {
  readonly id: string
  readonly name: string
  readonly thickener: string
}

async function greasesOf({ tx }: Work, fromId: string, toId: string): Promise<[NamedGrease, NamedGrease]> {
  const rows = await tx.prisma.grease.findMany({ where: { siteId: tx.scope.siteId, id: { in: [fromId, toId] } } })
  const [from, to] = [fromId, toId].map((id) => rows.find((row) => row.id === id))
  if (!from || !to) throw notFound('grease', 'toGreaseId')
  return [from, to]
}

function checkWay([from, to]: [NamedGrease, NamedGrease], way: Start['way']): void {
  const known = ({ thickener }: NamedGrease) => (isThickener(thickener) ? thickener : null)
  const { verdict } = changeOver(known(from), known(to))
  if (waysOf[verdict].includes(way)) return
  const instead =
    verdict === 'strip'
      ? 'the bearing has to be stripped, cleaned and filled anew'
      : 'have the mix tested first, or strip the bearing'
  const message = `${from.name} and ${to.name} do not go together safely: ${instead}.`
  throw fieldError('not-allowed-here', 'way', message)
}

async function openChangeOf(work: Work, id: string, positionId: string): Promise<OpenChange> {
  const open = await findOpenChange(work.tx, positionId)
  if (open?.id !== id) throw notFound('change-over')
  return open
}

async function change({ tx }: Work, id: string): Promise<GreaseChange> {
  const found = await findChange(tx.sql, tx.scope.siteId, id)
  if (!found) throw notFound('change-over')
  return found
}
