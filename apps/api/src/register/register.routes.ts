import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import type { PageQuery } from '../db/list-page.ts'
import { route } from '../http/route.ts'
import { chartRoutes } from './charts.routes.ts'
import * as register from './register.service.ts'
import type { Fields, RegisterTable } from './table.ts'
import { registerTables } from './tables.ts'

export function registerRoutes(app: FastifyInstance, context: Context): void {
  for (const table of registerTables) tableRoutes(app, context, table)
  chartRoutes(app, context)
}

function tableRoutes(app: FastifyInstance, context: Context, table: RegisterTable): void {
  const { list, read, create, change } = table.endpoints
  route(app, list, ({ scope, query }) => register.listRows(context, table, scope, query as PageQuery & Fields))
  route(app, read, ({ scope, params }) => register.readRow(context, table, scope, idOf(params)))
  route(app, create, ({ scope, body }) => register.createRow(context, table, scope, body as Fields & { id: string }))
  route(app, change, ({ scope, params, version, body }) =>
    register.changeRow(context, table, scope, { id: idOf(params), version, change: body as Fields }),
  )
}

function idOf(params: unknown): string {
  return (params as { id: string }).id
}
