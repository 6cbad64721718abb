import type { GreasePlan, NewGreasePlan } from '@shaftbook/contract/greasing'
import type { z } from 'zod'
import type { Prisma } from '../../../../prisma/client/client.ts'
import type { Context } from '../context.ts'
import { receive } from '../db/receipts.ts'
import { notFound } from '../domain-error.ts'
import { holdPlace } from '../meters/place.ts'
import { doWork, type Work, type Worker } from '../meters/work.ts'
import { refreshPositions } from '../bookkeeping/refresh.ts'
import { findGreaseName, findPlan, replacePlan } from './plans.store.ts'

/** Gives a position a new plan; the one before ends in the same moment. */
export function createPlan(
  context: Context,
  worker: Worker,
  body: z.output<typeof NewGreasePlan>,
): Promise<GreasePlan> {
  return doWork(context, worker, async (work) => {
    if ((await receive(work.tx, 'create-grease-plan', body.id, body)) === 'repeat') return await plan(work, body.id)
    await holdPlace(work.tx, body.positionId)
    if ((await findGreaseName(work.tx, body.greaseId)) === undefined) throw notFound('grease', 'greaseId')
    await replacePlan(work.tx, { ...body, duty: body.duty as Prisma.InputJsonObject, createdAt: work.now })
    await refreshPositions(work.tx, [body.positionId], work.now, 'grease plan changed')
    return await plan(work, body.id)
  })
}

async function plan(work: Work, id: string): Promise<GreasePlan> {
  const found = await findPlan(work.tx.sql, work.tx.scope.siteId, id)
  if (!found) throw notFound('grease plan')
  return found
}
