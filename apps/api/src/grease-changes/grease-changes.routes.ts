import * as contract from '@shaftbook/contract/grease-changes'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { notFound } from '../domain-error.ts'
import { route } from '../http/route.ts'
import { abandonChange, finishStripped, startChange, tellLabResult } from './grease-changes.service.ts'
import { findChange, listChanges } from './grease-changes.store.ts'

export function greaseChangeRoutes(app: FastifyInstance, context: Context): void {
  const { db } = context
  route(app, contract.listGreaseChanges, ({ scope, query }) =>
    db.readSite(scope, (sql) => listChanges(sql, scope.siteId, query)),
  )
  route(app, contract.readGreaseChange, async ({ scope, params }) => {
    const found = await db.readSite(scope, (sql) => findChange(sql, scope.siteId, params.id))
    if (!found) throw notFound('change-over')
    return found
  })
  route(app, contract.startGreaseChange, (call) => startChange(context, call, call.body))
  route(app, contract.tellLabResult, (call) => tellLabResult(context, call, call.params.id, call.body))
  route(app, contract.finishGreaseChange, (call) => finishStripped(context, call, call.params.id, call.body.note))
  route(app, contract.abandonGreaseChange, (call) => abandonChange(context, call, call.params.id, call.body.reason))
}
