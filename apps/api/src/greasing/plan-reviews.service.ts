import type { PlanReview, reviewGreasePlan } from '@shaftbook/contract/grease-plans'
import type { PlaceToday } from '@shaftbook/contract/plan-duty'
import type { z } from 'zod'
import { proposalFor, type PlanFacts } from '../bookkeeping/plan-flags.ts'
import { placeToday, plansInForce } from '../bookkeeping/plans-in-force.ts'
import { refreshPositions } from '../bookkeeping/refresh.ts'
import type { Context } from '../context.ts'
import { receive } from '../db/receipts.ts'
import { DomainError, fieldError, notFound } from '../domain-error.ts'
import { holdPlace } from '../meters/place.ts'
import { dayOf, doWork, type Work, type Worker } from '../meters/work.ts'
import { findReview } from './plan-reviews.store.ts'
import { findPlan } from './plans.store.ts'

type Review = z.output<(typeof reviewGreasePlan)['body']>

/** Keeps a plan as it is, with the reason: what it comes to today is written down beside it, and the flag clears. */
export function reviewPlan(context: Context, worker: Worker, planId: string, body: Review): Promise<PlanReview> {
  return doWork(context, worker, async (work) => {
    const { tx, now, personId } = work
    if ((await receive(tx, 'review-grease-plan', body.id, { ...body, planId })) === 'repeat')
      return await review(work, body.id)
    const plan = await findPlan(tx.sql, tx.scope.siteId, planId)
    if (!plan) throw notFound('grease plan')
    await holdPlace(tx, plan.positionId)
    if (plan.endedAt !== null) {
      throw new DomainError('not-allowed-here', `This plan of ${plan.tag} has ended: look at the plans in force.`)
    }
    if (body.reviewOn !== null && body.reviewOn <= dayOf(work, now)) {
      throw fieldError('not-allowed-here', 'reviewOn', 'Choose a later day to look at the plan again.')
    }
    const proposal = await proposalNow(work, plan.positionId, planId)
    const { siteId } = tx.scope
    await tx.prisma.planReview.create({
      data: {
        siteId,
        id: body.id,
        planId,
        reason: body.reason,
        reviewOn: body.reviewOn === null ? null : new Date(body.reviewOn),
        computedIntervalHours: proposal?.intervalHours ?? null,
        computedDoseG: proposal?.doseG ?? null,
        decidedAt: now,
        decidedBy: personId,
      },
    })
    await refreshPositions(tx, [plan.positionId], now, `plan kept: ${body.reason}`)
    return await review(work, body.id)
  })
}

async function proposalNow({ tx }: Work, positionId: string, planId: string) {
  const [row] = await tx.sql<{ plans: PlanFacts[]; place: PlaceToday }>(
    `select ${plansInForce('p')} as plans, ${placeToday('s', 'coalesce(b.bearing_type_id, p.bearing_type_id)')} as place
     from position p
     join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
     left join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
     left join bearing b on b.site_id = f.site_id and b.id = f.bearing_id
     where p.site_id = $1::uuid and p.id = $2::uuid`,
    [tx.scope.siteId, positionId],
  )
  const plan = row?.plans.find((found) => found.planId === planId)
  return row && plan ? proposalFor(plan, row.place) : null
}

async function review({ tx }: Work, id: string): Promise<PlanReview> {
  const found = await findReview(tx.sql, tx.scope.siteId, id)
  if (!found) throw notFound('review')
  return found
}
