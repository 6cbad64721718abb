import type { GreasePlan, NewGreasePlan } from '@shaftbook/contract/grease-plans'
import type { Prisma } from '../../../../prisma/client/client.ts'
import type { Context } from '../context.ts'
import { receive } from '../db/receipts.ts'
import { DomainError, fieldError, notFound } from '../domain-error.ts'
import { findOpenChange } from '../grease-changes/grease-changes.store.ts'
import { holdPlace } from '../meters/place.ts'
import { doWork, type Work, type Worker } from '../meters/work.ts'
import { refreshPositions } from '../bookkeeping/refresh.ts'
import { endPlan, findGreaseName, findPlan, replacePlan } from './plans.store.ts'

const usualMonths = 12

/** Gives a position a new plan; the one before of its task ends in the same moment. */
export function createPlan(context: Context, worker: Worker, body: NewGreasePlan): Promise<GreasePlan> {
  return doWork(context, worker, async (work) => {
    if ((await receive(work.tx, 'create-grease-plan', body.id, body)) === 'repeat') return await plan(work, body.id)
    await holdPlace(work.tx, body.positionId)
    const { greaseId, duty, reviewOn, calendarMonths, ...told } = body
    if (greaseId !== null && (await findGreaseName(work.tx, greaseId)) === undefined) {
      throw notFound('grease', 'greaseId')
    }
    await checkNoChange(work, body)
    await replacePlan(work.tx, {
      ...told,
      greaseId,
      calendarMonths: calendarMonths === undefined && body.task === 'regrease' ? usualMonths : (calendarMonths ?? null),
      reviewOn: reviewOn === null ? null : new Date(reviewOn),
      duty: duty as Prisma.InputJsonObject,
      createdAt: work.now,
    })
    await refreshPositions(work.tx, [body.positionId], work.now, 'grease plan changed')
    return await plan(work, body.id)
  })
}

/** While a position goes over to another grease, its plan is what the change-over makes of it. */
async function checkNoChange(
  work: Work,
  { positionId, task }: Pick<NewGreasePlan, 'positionId' | 'task'>,
): Promise<void> {
  if (task !== 'regrease' && task !== null) return
  const change = await findOpenChange(work.tx, positionId)
  if (!change) return
  const message = `A change-over from ${change.fromName} to ${change.toName} is under way here: finish or abandon it before the plan is changed.`
  throw fieldError('not-allowed-here', 'positionId', message)
}

/** Ends a plan without a new one: its task is no longer done at the position. */
export function endGreasePlan(context: Context, worker: Worker, id: string, reason: string): Promise<GreasePlan> {
  return doWork(context, worker, async (work) => {
    const { positionId, tag, task } = await plan(work, id)
    await holdPlace(work.tx, positionId)
    if (task === 'regrease') await checkNoChange(work, { positionId, task })
    if (!(await endPlan(work.tx, id, work.now, reason))) {
      throw new DomainError('not-allowed-here', `This plan of ${tag} has ended already: look at the plans in force.`)
    }
    await refreshPositions(work.tx, [positionId], work.now, 'grease plan ended')
    return await plan(work, id)
  })
}

async function plan(work: Work, id: string): Promise<GreasePlan> {
  const found = await findPlan(work.tx.sql, work.tx.scope.siteId, id)
  if (!found) throw notFound('grease plan')
  return found
}
