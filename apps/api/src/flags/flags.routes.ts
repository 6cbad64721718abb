import { countFlags, listFlags, putOffFlag, readFlag } from '@shaftbook/contract/flags'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { route } from '../http/route.ts'
import * as flags from './flags.service.ts'

export function flagRoutes(app: FastifyInstance, context: Context): void {
  route(app, listFlags, ({ scope, site, query }) => flags.listFlags(context, scope, site.timeZone, query))
  route(app, countFlags, ({ scope, site }) => flags.countFlags(context, scope, site.timeZone))
  route(app, readFlag, ({ scope, params }) => flags.readFlag(context, scope, params.id))
  route(app, putOffFlag, ({ scope, site, params, version, body }) =>
    flags.putOffFlag(context, scope, site.timeZone, { id: params.id, version, ...body }),
  )
}
