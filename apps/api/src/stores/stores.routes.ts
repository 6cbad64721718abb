import { changeKit, createKit, listKits, listPartUses, readKit } from '@shaftbook/contract/kits'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { route } from '../http/route.ts'
import * as stores from './stores.service.ts'

export function storesRoutes(app: FastifyInstance, context: Context): void {
  route(app, listKits, ({ scope, query }) => stores.listKits(context, scope, query))
  route(app, readKit, ({ scope, params }) => stores.readKit(context, scope, params.id))
  route(app, createKit, ({ scope, body }) => stores.createKit(context, scope, body))
  route(app, changeKit, ({ scope, params, version, body }) =>
    stores.changeKit(context, scope, { id: params.id, version, change: body }),
  )
  route(app, listPartUses, ({ scope, params, query }) => stores.listPartUses(context, scope, params.id, query))
}
