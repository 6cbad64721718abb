import {
  changeMakerChart,
  createMakerChart,
  listMakerCharts,
  readChartTakeover,
  readMakerChart,
  takeOverPositions,
} from '@shaftbook/contract/maker-charts'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { route } from '../http/route.ts'
import { readTakeover, takeOver } from './chart-takeover.ts'
import * as charts from './charts.service.ts'

export function chartRoutes(app: FastifyInstance, context: Context): void {
  route(app, listMakerCharts, ({ scope, query }) => charts.listCharts(context, scope, query))
  route(app, readMakerChart, ({ scope, params }) => charts.readChart(context, scope, params.id))
  route(app, createMakerChart, ({ scope, body }) => charts.createChart(context, scope, body))
  route(app, changeMakerChart, ({ scope, params, version, body }) =>
    charts.changeChart(context, scope, { id: params.id, version, change: body }),
  )
  route(app, readChartTakeover, ({ scope, params }) => readTakeover(context, scope, params.id))
  route(app, takeOverPositions, ({ scope, params, version, body }) =>
    takeOver(context, scope, { id: params.id, version, positionCount: body.positionCount }),
  )
}
