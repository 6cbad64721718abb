import * as plans from '@shaftbook/contract/grease-plans'
import * as contract from '@shaftbook/contract/greasing'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { notFound } from '../domain-error.ts'
import { route } from '../http/route.ts'
import { correctGreasing, createGreasing } from './greasing.service.ts'
import { findGreasing, listDueItems, listGreasings } from './greasing.store.ts'
import { reviewPlan } from './plan-reviews.service.ts'
import { listReviews } from './plan-reviews.store.ts'
import { createPlan, endGreasePlan } from './plans.service.ts'
import { findPlan, listPlans } from './plans.store.ts'

export function greasingRoutes(app: FastifyInstance, context: Context): void {
  const { db } = context
  route(app, contract.listDue, ({ scope, query }) =>
    db.readSite(scope, (sql) => listDueItems(sql, scope.siteId, query)),
  )

  route(app, contract.listGreasings, ({ scope, query }) =>
    db.readSite(scope, (sql) => listGreasings(sql, scope.siteId, query)),
  )
  route(app, contract.readGreasing, async ({ scope, params }) => {
    const found = await db.readSite(scope, (sql) => findGreasing(sql, scope.siteId, params.id))
    if (!found) throw notFound('greasing')
    return found
  })
  route(app, contract.createGreasing, (call) => createGreasing(context, call, call.body))
  route(app, contract.correctGreasing, (call) => correctGreasing(context, call, call.params.id, call.body))

  route(app, plans.listGreasePlans, ({ scope, query }) =>
    db.readSite(scope, (sql) => listPlans(sql, scope.siteId, query)),
  )
  route(app, plans.readGreasePlan, async ({ scope, params }) => {
    const found = await db.readSite(scope, (sql) => findPlan(sql, scope.siteId, params.id))
    if (!found) throw notFound('grease plan')
    return found
  })
  route(app, plans.createGreasePlan, (call) => createPlan(context, call, call.body))
  route(app, plans.listPlanReviews, ({ scope, query }) =>
    db.readSite(scope, (sql) => listReviews(sql, scope.siteId, query)),
  )
  route(app, plans.reviewGreasePlan, (call) => reviewPlan(context, call, call.params.id, call.body))
  route(app, plans.endGreasePlan, (call) => endGreasePlan(context, call, call.params.id, call.body.reason))
}
