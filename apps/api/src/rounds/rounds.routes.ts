import { loadGun as loadGunEndpoint } from '@shaftbook/contract/guns'
import * as walks from '@shaftbook/contract/round-walks'
import * as contract from '@shaftbook/contract/rounds'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { notFound } from '../domain-error.ts'
import { route } from '../http/route.ts'
import { loadGun } from './guns.service.ts'
import { changeRound, createRound } from './rounds.service.ts'
import { findRound, listRounds, proposeStops } from './rounds.store.ts'
import { finishWalk, recordStop, startWalk } from './walks.service.ts'
import { findWalk, listWalks } from './walks.store.ts'

export function roundRoutes(app: FastifyInstance, context: Context): void {
  const { db } = context
  route(app, loadGunEndpoint, (call) => loadGun(context, call, call.params.id, call.body))

  route(app, contract.proposeStops, ({ scope, query }) =>
    db.readSite(scope, (sql) => proposeStops(sql, scope.siteId, query)),
  )
  route(app, contract.listRounds, ({ scope, query }) =>
    db.readSite(scope, (sql) => listRounds(sql, scope.siteId, query)),
  )
  route(app, contract.readRound, async ({ scope, params }) => {
    const found = await db.readSite(scope, (sql) => findRound(sql, scope.siteId, params.id))
    if (!found) throw notFound('round')
    return found
  })
  route(app, contract.createRound, ({ scope, body }) => createRound(context, scope, body))
  route(app, contract.changeRound, ({ scope, params, version, body }) =>
    changeRound(context, scope, { id: params.id, version, change: body }),
  )

  route(app, walks.listRoundWalks, ({ scope, query }) =>
    db.readSite(scope, (sql) => listWalks(sql, scope.siteId, query)),
  )
  route(app, walks.readRoundWalk, async ({ scope, params }) => {
    const found = await db.readSite(scope, (sql) => findWalk(sql, scope.siteId, params.id))
    if (!found) throw notFound('walk of a round')
    return found
  })
  route(app, walks.startRoundWalk, (call) => startWalk(context, call, call.body))
  route(app, walks.recordWalkStop, (call) => recordStop(context, call, call.params.id, call.body))
  route(app, walks.finishRoundWalk, (call) => finishWalk(context, call, call.params.id, call.body))
}
