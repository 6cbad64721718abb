import { correctMeterReading, createMeterReading, listMeterReadings } from '@shaftbook/contract/meter-readings'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { route } from '../http/route.ts'
import { correctReading, createReading } from './meters.service.ts'
import { listReadings } from './meters.store.ts'

export function meterRoutes(app: FastifyInstance, context: Context): void {
  const { db } = context
  route(app, listMeterReadings, ({ scope, query }) =>
    db.readSite(scope, (sql) => listReadings(sql, scope.siteId, query)),
  )
  route(app, createMeterReading, (call) => createReading(context, call, call.body))
  route(app, correctMeterReading, (call) => correctReading(context, call, call.params.id, call.body))
}
