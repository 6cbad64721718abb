import { bandOfPosition, presentBand } from '@shaftbook/contract/band-of-position'
import type { Fitment, PositionHistory, PositionOverview } from '@shaftbook/contract/position-views'
import type { Context } from '../context.ts'
import type { Scope, Sql } from '../db/database.ts'
import type { PageQuery } from '../db/list-page.ts'
import { notFound } from '../domain-error.ts'
import { isGunPlan } from '@shaftbook/contract/grease-plans'
import { dueItemsAt } from '../greasing/greasing.store.ts'
import { currentPlans } from '../greasing/plans.store.ts'
import { plannedFittings } from '../mounts/fitting.store.ts'
import { flagsAt } from '../flags/flags.store.ts'
import { findKits } from '../stores/stores.store.ts'
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

export async function readOverview({ db }: Context, scope: Scope, id: string): Promise<PositionOverview> {
  const [found] = await db.readSite(scope, (sql) => overviewsOf(sql, scope.siteId, [id]))
  if (!found) throw notFound('position')
  return found
}

/** A page of positions by tag, each with everything that stands there, in the same few statements however many they are. */
export async function listOverviews({ db }: Context, scope: Scope, query: overview.OverviewQuery) {
  return await db.readSite(scope, async (sql) => {
    const { rows, nextCursor } = await overview.pageOfPositions(sql, scope.siteId, query)
    const ids = rows.map(({ id }) => id)
    return { items: await overviewsOf(sql, scope.siteId, ids), nextCursor }
  })
}

/** Everything that stands at these positions, in their order. */
async function overviewsOf(sql: Sql, siteId: string, ids: readonly string[]): Promise<PositionOverview[]> {
  const places = byKey(await overview.findPlaces(sql, siteId, ids), ({ position }) => position.id)
  const fittings = await plannedFittings(sql, siteId, ids)
  const stays = byKey(await fitments.openFitmentsAt(sql, siteId, ids), ({ positionId }) => positionId)
  const plans = Map.groupBy(await currentPlans(sql, siteId, ids), ({ positionId }) => positionId)
  const tasks = Map.groupBy(await dueItemsAt(sql, siteId, ids), ({ positionId }) => positionId)
  const found = [...places.values()]
  const flags = await flagsAt(
    sql,
    siteId,
    ids,
    found.map(({ shaft }) => shaft.id),
  )
  const kitIds = found.flatMap(({ position }) => position.kitId ?? [])
  const kits = byKey(await findKits(sql, siteId, kitIds), ({ id }) => id)

  return ids.flatMap((id) => {
    const [place, fitting] = [places.get(id), fittings.get(id)]
    if (!place || !fitting) return []
    const { band, residualMinimum } = bandOfPosition(fitting.position, fitting.planned, fitting.chart)
    return {
      ...place,
      band: band && presentBand(band),
      residualMinUm: residualMinimum?.minUm ?? null,
      fitment: stays.get(id) ?? null,
      plan: plans.get(id)?.find(isGunPlan) ?? null,
      due: tasks.get(id)?.find(({ task }) => task === 'regrease') ?? null,
      plans: plans.get(id) ?? [],
      tasks: tasks.get(id) ?? [],
      flags: flags.filter(({ positionId, shaftId }) => positionId === id || shaftId === place.shaft.id),
      kit: kits.get(place.position.kitId ?? '') ?? null,
    }
  })
}

function byKey<Row>(rows: readonly Row[], keyOf: (row: Row) => string): Map<string, Row> {
  return new Map(rows.map((row) => [keyOf(row), row]))
}

/** How many greasings a life strip draws, on its page and on a device. */
const greasingsDrawn = 1000
const greasingsOnDevice = 50

/** The life strip: every stay of a bearing, and the newest greasings. */
export async function readHistory({ db }: Context, scope: Scope, id: string): Promise<PositionHistory> {
  return await db.readSite(scope, async (sql) => {
    if (!(await overview.positionExists(sql, scope.siteId, id))) throw notFound('position')
    const [history] = await historiesOf(sql, scope.siteId, [id], greasingsDrawn)
    if (!history) throw notFound('position')
    return history
  })
}

/** A page of positions by tag with their life strips, in the same few statements however many they are. */
export async function listHistories({ db }: Context, scope: Scope, query: overview.OverviewQuery) {
  return await db.readSite(scope, async (sql) => {
    const { rows, nextCursor } = await overview.pageOfPositions(sql, scope.siteId, query)
    const ids = rows.map(({ id }) => id)
    return { items: await historiesOf(sql, scope.siteId, ids, greasingsOnDevice), nextCursor }
  })
}

async function historiesOf(sql: Sql, siteId: string, ids: readonly string[], newest: number) {
  const stays = Map.groupBy(await fitments.fitmentsAt(sql, siteId, ids), ({ positionId }) => positionId)
  const greased = Map.groupBy(await fitments.greasingsAt(sql, siteId, ids, newest), ({ positionId }) => positionId)
  return ids.map((positionId) => {
    const [mine, all] = [stays.get(positionId) ?? [], greased.get(positionId) ?? []]
    const greasings = all.slice(0, newest)
    const starts = [...mine.map(({ fittedAt }) => fittedAt), ...greasings.map(({ greasedAt }) => greasedAt)].sort()
    return {
      positionId,
      from: starts[0] ?? null,
      fitments: mine,
      greasings,
      olderGreasingsLeftOut: all.length > newest,
    }
  })
}
