import { listPositionHistories, listPositionOverviews } from '@shaftbook/contract/device'
import {
  listFitments,
  listPositionBoard,
  listTreeAreas,
  listTreeMachines,
  readFitment,
  readPositionHistory,
  readPositionOverview,
} from '@shaftbook/contract/position-views'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { route } from '../http/route.ts'
import * as positions from './positions.service.ts'

export function positionRoutes(app: FastifyInstance, context: Context): void {
  route(app, listPositionBoard, ({ scope, site, query }) => positions.listBoard(context, scope, site.timeZone, query))
  route(app, listTreeAreas, ({ scope, site }) => positions.listTreeAreas(context, scope, site.timeZone))
  route(app, listTreeMachines, ({ scope, site, params, query }) =>
    positions.listTreeMachines(context, scope, site.timeZone, { areaId: params.id, ...query }),
  )
  route(app, listFitments, ({ scope, query }) => positions.listFitments(context, scope, query))
  route(app, readFitment, ({ scope, params }) => positions.readFitment(context, scope, params.id))
  route(app, readPositionOverview, ({ scope, params }) => positions.readOverview(context, scope, params.id))
  route(app, listPositionOverviews, ({ scope, query }) => positions.listOverviews(context, scope, query))
  route(app, listPositionHistories, ({ scope, query }) => positions.listHistories(context, scope, query))
  route(app, readPositionHistory, ({ scope, params }) => positions.readHistory(context, scope, params.id))
}
