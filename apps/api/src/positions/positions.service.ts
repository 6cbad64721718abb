import { bandOfPosition, presentBand } from '@shaftbook/contract/band-of-position'
import type { Fitment, PositionHistory, PositionOverview } from '@shaftbook/contract/position-views'
import type { Context } from '../context.ts'
import type { Scope, Sql } from '../db/database.ts'
import type { PageQuery } from '../db/list-page.ts'
import { notFound } from '../domain-error.ts'
import { listDueItems } from '../greasing/greasing.store.ts'
import { listPlans } from '../greasing/plans.store.ts'
import { findFitting } from '../mounts/fitting.store.ts'
import { flagsAt } from '../flags/flags.store.ts'
import { findKit } from '../stores/stores.store.ts'
import { plantDay } from '@shaftbook/contract/time-zone'
import * as board from './board.store.ts'
import * as fitments from './fitments.store.ts'
import * as overview from './overview.store.ts'
import * as tree from './tree.store.ts'

export async function listBoard({ db, now }: Context, scope: Scope, timeZone: string, query: board.BoardQuery) {
  return await db.readSite(scope, (sql) => board.listBoard(sql, scope.siteId, query, plantDay(now(), timeZone)))
}

export async function listTreeAreas({ db, now }: Context, scope: Scope, timeZone: string) {
  return { areas: await db.readSite(scope, (sql) => tree.listAreas(sql, scope.siteId, plantDay(now(), timeZone))) }
}

export async function listTreeMachines(
  { db, now }: Context,
  scope: Scope,
  timeZone: string,
  query: PageQuery & { areaId: string },
) {
  return await db.readSite(scope, async (sql) => {
    if (!(await tree.areaExists(sql, scope.siteId, query.areaId))) throw notFound('area')
    const { rows, nextCursor } = await tree.listMachines(sql, scope.siteId, query)
    const shafts = await tree.shaftsOf(
      sql,
      scope.siteId,
      rows.map((machine) => machine.id),
      plantDay(now(), timeZone),
    )
    return { items: rows.map((machine) => ({ ...machine, shafts: shafts.get(machine.id) ?? [] })), nextCursor }
  })
}

export async function listFitments({ db }: Context, scope: Scope, query: fitments.FitmentQuery) {
  return await db.readSite(scope, (sql) => fitments.listFitments(sql, scope.siteId, query))
}

export async function readFitment({ db }: Context, scope: Scope, id: string): Promise<Fitment> {
  const fitment = await db.readSite(scope, (sql) => fitments.findFitment(sql, scope.siteId, id))
  if (!fitment) throw notFound('fitment')
  return fitment
}

/** Everything that stands at a position, in the same few statements for every position. */
export async function readOverview({ db }: Context, scope: Scope, id: string): Promise<PositionOverview> {
  return await db.readSite(scope, async (sql) => {
    const place = await overview.findPlace(sql, scope.siteId, id)
    if (!place) throw notFound('position')
    const { position, chart, planned } = await findFitting({ scope, sql }, id, place.bearingType.id)
    const { band, residualMinimum } = bandOfPosition(position, planned, chart)
    return {
      ...place,
      band: band && presentBand(band),
      residualMinUm: residualMinimum?.minUm ?? null,
      fitment: (await fitments.openFitmentAt(sql, scope.siteId, id)) ?? null,
      ...(await greasingAt(sql, scope, id)),
      flags: await flagsAt(sql, scope.siteId, id, place.shaft.id),
      kit: await kitOf(sql, scope, place.position.kitId),
    }
  })
}

async function greasingAt(
  sql: Sql,
  { siteId }: Scope,
  positionId: string,
): Promise<Pick<PositionOverview, 'plan' | 'due'>> {
  const newest = await listPlans(sql, siteId, { positionId, limit: 1 })
  const due = await listDueItems(sql, siteId, { positionId, limit: 1 })
  return { plan: newest.items.find((plan) => plan.endedAt === null) ?? null, due: due.items[0] ?? null }
}

async function kitOf(sql: Sql, { siteId }: Scope, kitId: string | null) {
  return kitId === null ? null : ((await findKit(sql, siteId, kitId)) ?? null)
}

/** The life strip: every stay of a bearing, and the newest greasings. */
export async function readHistory({ db }: Context, scope: Scope, id: string): Promise<PositionHistory> {
  return await db.readSite(scope, async (sql) => {
    if (!(await overview.positionExists(sql, scope.siteId, id))) throw notFound('position')
    const stays = await fitments.fitmentsAt(sql, scope.siteId, id)
    const { greasings, olderLeftOut } = await fitments.greasingsAt(sql, scope.siteId, id)
    const starts = [...stays.map((stay) => stay.fittedAt), ...greasings.map((greasing) => greasing.greasedAt)].sort()
    return { from: starts[0] ?? null, fitments: stays, greasings, olderGreasingsLeftOut: olderLeftOut }
  })
}
