import * as contract from '@shaftbook/contract/mount-plans'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { route } from '../http/route.ts'
import { changePlan, createPlan, readPlan } from './mount-plans.service.ts'
import { listPlans } from './mount-plans.store.ts'

export function mountPlanRoutes(app: FastifyInstance, context: Context): void {
  const { db } = context
  route(app, contract.listMountPlans, ({ scope, query }) =>
    db.readSite(scope, (sql) => listPlans(sql, scope.siteId, query)),
  )
  route(app, contract.readMountPlan, ({ scope, params }) =>
    db.readSite(scope, (sql) => readPlan(sql, scope.siteId, params.id)),
  )
  route(app, contract.createMountPlan, (call) => createPlan(context, call, call.body))
  route(app, contract.changeMountPlan, (call) =>
    changePlan(context, call, { id: call.params.id, version: call.version }, call.body),
  )
}
