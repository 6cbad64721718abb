import { readGreasingCompliance, readGreasingForecast } from '@shaftbook/contract/greasing-reports'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { route } from '../http/route.ts'
import { greasingCompliance } from './compliance.service.ts'
import { greasingForecast } from './forecast.service.ts'

export function greasingReportRoutes(app: FastifyInstance, context: Context): void {
  route(app, readGreasingForecast, ({ scope, site, query }) => greasingForecast(context, { scope, site, ...query }))
  route(app, readGreasingCompliance, ({ scope, site, query }) => greasingCompliance(context, { scope, site, query }))
}
