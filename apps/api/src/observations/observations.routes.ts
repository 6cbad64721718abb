import * as contract from '@shaftbook/contract/observations'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { notFound } from '../domain-error.ts'
import { route } from '../http/route.ts'
import { createObservation, withdrawObservation } from './observations.service.ts'
import { findObservation, listObservations } from './observations.store.ts'

export function observationRoutes(app: FastifyInstance, context: Context): void {
  const { db } = context
  route(app, contract.listObservations, ({ scope, query }) =>
    db.readSite(scope, (sql) => listObservations(sql, scope.siteId, query)),
  )
  route(app, contract.readObservation, async ({ scope, params }) => {
    const found = await db.readSite(scope, (sql) => findObservation(sql, scope.siteId, params.id))
    if (!found) throw notFound('observation')
    return found
  })
  route(app, contract.createObservation, (call) => createObservation(context, call, call.body))
  route(app, contract.withdrawObservation, (call) =>
    withdrawObservation(context, call, call.params.id, call.body.reason),
  )
}
