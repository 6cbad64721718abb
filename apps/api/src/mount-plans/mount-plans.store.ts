import type { MountPlan } from '@shaftbook/contract/mount-plans'
import type { Sql, SiteTx } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'

const columns = `plan.id, plan.version, plan.created_at as "createdAt", plan.updated_at as "updatedAt",
  plan.position_id as "positionId", plan.planned_for::text as "plannedFor", plan.reason, plan.bearing_type_id as "bearingTypeId",
  plan.who, plan.note, p.tag, m.name as "machineName", a.id as "areaId", a.name as "areaName", t.designation,
  p.kit_id as "kitId", k.name as "kitName", plan.dropped_reason as "droppedReason", plan.mount_record_id as "mountRecordId",
  planner.name as "plannedBy", plan.ended_at as "endedAt",
  case when plan.ended_at is null then 'open' when plan.mount_record_id is null then 'dropped' else 'done' end as state`
const tables = `mount_plan plan
  join position p on p.site_id = plan.site_id and p.id = plan.position_id
  join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
  join machine m on m.site_id = s.site_id and m.id = s.machine_id
  join area a on a.site_id = m.site_id and a.id = m.area_id
  join bearing_type t on t.site_id = plan.site_id and t.id = coalesce(plan.bearing_type_id, p.bearing_type_id)
  left join kit k on k.site_id = p.site_id and k.id = p.kit_id
  join person planner on planner.id = plan.planned_by`
const states = {
  open: 'plan.ended_at is null',
  done: 'plan.mount_record_id is not null',
  dropped: 'plan.dropped_reason is not null',
}

type PlanRow = Omit<MountPlan, 'createdAt' | 'updatedAt' | 'endedAt'> & {
  createdAt: Date
  updatedAt: Date
  endedAt: Date | null
}

function present({ createdAt, updatedAt, endedAt, ...row }: PlanRow): MountPlan {
  return {
    ...row,
    createdAt: createdAt.toISOString(),
    updatedAt: updatedAt.toISOString(),
    endedAt: endedAt?.toISOString() ?? null,
  }
}

export interface PlanQuery extends PageQuery {
  readonly positionId?: string | undefined
  readonly areaId?: string | undefined
  readonly state: MountPlan['state']
}

/** Planned mounts, the nearest day first. */
export async function listPlans(sql: Sql, siteId: string, query: PlanQuery) {
  const where = Where.atSite('plan', siteId)
    .add(() => states[query.state])
    .addIf(query.positionId, (id) => `plan.position_id = ${id}::uuid`)
    .addIf(query.areaId, (id) => `a.id = ${id}::uuid`)
  const sort = { column: 'plan.planned_for', type: 'date', descending: false } as const
  const { rows, nextCursor } = await readPage<PlanRow>(
    sql,
    { select: columns, from: tables, where, sort, id: 'plan.id' },
    query,
  )
  return { items: rows.map((row) => present(row)), nextCursor }
}

export async function findPlan(sql: Sql, siteId: string, id: string): Promise<MountPlan | undefined> {
  const [row] = await sql<PlanRow>(
    `select ${columns} from ${tables} where plan.site_id = $1::uuid and plan.id = $2::uuid`,
    [siteId, id],
  )
  return row && present(row)
}

export interface PlanFields {
  readonly plannedFor: string
  readonly reason: string
  readonly bearingTypeId: string | null
  readonly who: string
  readonly note: string
}

function stored({ plannedFor, reason, bearingTypeId, who, note }: PlanFields) {
  return { plannedFor: new Date(plannedFor), reason, bearingTypeId, who, note }
}

export async function addPlan(
  tx: SiteTx,
  plan: PlanFields & { id: string; positionId: string; plannedBy: string },
): Promise<void> {
  const { id, positionId, plannedBy } = plan
  await tx.prisma.mountPlan.create({ data: { siteId: tx.scope.siteId, id, positionId, plannedBy, ...stored(plan) } })
}

/** True where the plan was open and still had this version. */
export async function changePlan(
  tx: SiteTx,
  wanted: { id: string; version: number },
  plan: PlanFields & { droppedReason: string | null; endedAt: Date | null },
): Promise<boolean> {
  const { droppedReason, endedAt } = plan
  const changed = await tx.prisma.mountPlan.updateMany({
    where: { siteId: tx.scope.siteId, ...wanted, endedAt: null },
    data: { ...stored(plan), droppedReason, endedAt },
  })
  return changed.count === 1
}

/** Closes an open plan by the mount that it planned; false where it was closed already. */
export async function closePlan(tx: SiteTx, id: string, mountRecordId: string, endedAt: Date): Promise<boolean> {
  const changed = await tx.prisma.mountPlan.updateMany({
    where: { siteId: tx.scope.siteId, id, endedAt: null },
    data: { mountRecordId, endedAt },
  })
  return changed.count === 1
}
