import * as contract from '@shaftbook/contract/mounts'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { route } from '../http/route.ts'
import { correctMount } from './correcting.ts'
import { decideMount } from './deciding.ts'
import { listRecords } from './mount-list.store.ts'
import { changeDraft, createMount, readMount, signMount } from './mounts.service.ts'

export function mountRoutes(app: FastifyInstance, context: Context): void {
  const { db } = context
  route(app, contract.listMounts, ({ scope, query }) =>
    db.readSite(scope, (sql) => listRecords(sql, scope.siteId, query)),
  )
  route(app, contract.readMount, ({ scope, params }) =>
    db.readSite(scope, (sql) => readMount(sql, scope.siteId, params.id)),
  )
  route(app, contract.createMount, (call) => createMount(context, call, call.body))
  route(app, contract.changeMountDraft, (call) => changeDraft(context, call, call.params.id, call.version, call.body))
  route(app, contract.signMount, (call) => signMount(context, call, call.params.id, call.version, call.body))
  route(app, contract.decideMount, (call) => decideMount(context, call, call.params.id, call.body))
  route(app, contract.correctMount, (call) => correctMount(context, call, call.params.id, call.body))
}
