import { readLifeSummary } from '@shaftbook/contract/life'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { route } from '../http/route.ts'
import { lifeSummary } from './life.service.ts'

export function lifeRoutes(app: FastifyInstance, { db }: Context): void {
  route(app, readLifeSummary, ({ scope }) => db.readSite(scope, (sql) => lifeSummary(sql, scope.siteId)))
}
