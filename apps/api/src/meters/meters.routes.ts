import { listMeterBoard } from '@shaftbook/contract/meter-board'
import {
  batchMeterReadings,
  correctMeterReading,
  createMeterReading,
  listMeterReadings,
} from '@shaftbook/contract/meter-readings'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { route } from '../http/route.ts'
import { takeBatch } from './batch.service.ts'
import { listBoard } from './board.store.ts'
import { correctReading, createReading } from './meters.service.ts'
import { listReadings } from './meters.store.ts'

export function meterRoutes(app: FastifyInstance, context: Context): void {
  const { db } = context
  route(app, listMeterReadings, ({ scope, query }) =>
    db.readSite(scope, (sql) => listReadings(sql, scope.siteId, query)),
  )
  route(app, listMeterBoard, ({ scope, query }) => db.readSite(scope, (sql) => listBoard(sql, scope.siteId, query)))
  route(app, createMeterReading, (call) => createReading(context, call, call.body))
  route(app, batchMeterReadings, (call) => takeBatch(context, call, call.body.readings))
  route(app, correctMeterReading, (call) => correctReading(context, call, call.params.id, call.body))
}
