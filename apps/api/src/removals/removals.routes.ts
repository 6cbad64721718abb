import * as contract from '@shaftbook/contract/removals'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { route } from '../http/route.ts'
import { correctRemoval, createRemoval, listRemovals, readRemoval } from './removals.service.ts'

export function removalRoutes(app: FastifyInstance, context: Context): void {
  const { db } = context
  route(app, contract.listRemovals, ({ scope, query }) =>
    db.readSite(scope, (sql) => listRemovals(sql, scope.siteId, query)),
  )
  route(app, contract.readRemoval, ({ scope, params }) =>
    db.readSite(scope, (sql) => readRemoval(sql, scope.siteId, params.id)),
  )
  route(app, contract.createRemoval, (call) => createRemoval(context, call, call.body))
  route(app, contract.correctRemoval, (call) => correctRemoval(context, call, call.params.id, call.body))
}
