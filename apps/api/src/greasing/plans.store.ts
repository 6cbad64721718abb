import type { GreasePlan, GreaseTask } from '@shaftbook/contract/grease-plans'
import type { Prisma } from '../../../../prisma/client/client.ts'
import type { Sql, SiteTx } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'

const columns = `plan.id, plan.version, plan.created_at as "createdAt", plan.updated_at as "updatedAt",
  plan.position_id as "positionId", p.tag, plan.way, plan.task, plan.grease_id as "greaseId", plan.oil, plan.entry,
  plan.dose_g as "doseG", plan.interval_hours as "intervalHours", plan.calendar_months as "calendarMonths",
  plan.calendar_days as "calendarDays", plan.source, plan.reason, plan.review_on::text as "reviewOn", plan.duty,
  grease.name as "greaseName", plan.ended_at as "endedAt", plan.ended_reason as "endedReason"`
const tables = `grease_plan plan join position p on p.site_id = plan.site_id and p.id = plan.position_id
  left join grease on grease.site_id = plan.site_id and grease.id = plan.grease_id`

type PlanRow = Omit<GreasePlan, 'createdAt' | 'updatedAt' | 'endedAt'> & {
  createdAt: Date
  updatedAt: Date
  endedAt: Date | null
}

function present(row: PlanRow): GreasePlan {
  const { createdAt, updatedAt, endedAt } = row
  return {
    ...row,
    createdAt: createdAt.toISOString(),
    updatedAt: updatedAt.toISOString(),
    endedAt: endedAt?.toISOString() ?? null,
  }
}

export interface PlanQuery extends PageQuery {
  readonly positionId?: string | undefined
  readonly way?: string | undefined
  readonly current?: boolean | undefined
}

export async function listPlans(sql: Sql, siteId: string, query: PlanQuery) {
  const where = new Where()
    .add((value) => `plan.site_id = ${value(siteId)}::uuid`)
    .addIf(query.positionId, (id) => `plan.position_id = ${id}::uuid`)
    .addIf(query.way, (way) => `plan.way = ${way}`)
  if (query.current !== undefined) where.add(() => `(plan.ended_at is null) = ${query.current}`)
  const sort = { column: 'plan.created_at', type: 'timestamptz', descending: true } as const
  const spec = { select: columns, from: tables, where, sort, id: 'plan.id' }
  const { rows, nextCursor } = await readPage<PlanRow>(sql, spec, query)
  return { items: rows.map((row) => present(row)), nextCursor }
}

/** The plans in force at these positions. */
export async function currentPlans(sql: Sql, siteId: string, positionIds: readonly string[]): Promise<GreasePlan[]> {
  const rows = await sql<PlanRow>(
    `select ${columns} from ${tables}
     where plan.site_id = $1::uuid and plan.position_id = any($2::uuid[]) and plan.ended_at is null`,
    [siteId, positionIds],
  )
  return rows.map((row) => present(row))
}

export async function findPlan(sql: Sql, siteId: string, id: string): Promise<GreasePlan | undefined> {
  const [row] = await sql<PlanRow>(
    `select ${columns} from ${tables} where plan.site_id = $1::uuid and plan.id = $2::uuid`,
    [siteId, id],
  )
  return row && present(row)
}

export interface PlanInForce {
  readonly id: string
  readonly greaseId: string | null
  readonly greaseName: string | null
  readonly doseG: number | null
}

/** A task's plan that was in force at a moment; before there was any, the first one, since nobody had written it down yet. */
export async function findPlanAt(
  tx: SiteTx,
  positionId: string,
  task: GreaseTask,
  at: Date,
): Promise<PlanInForce | undefined> {
  const [plan] = await tx.sql<PlanInForce>(
    `select plan.id, plan.grease_id as "greaseId", grease.name as "greaseName", plan.dose_g as "doseG"
     from ${tables}
     where plan.site_id = $1::uuid and plan.position_id = $2::uuid and plan.task = $3
       and (plan.ended_at is null or plan.ended_at > $4::timestamptz)
     order by plan.created_at limit 1`,
    [tx.scope.siteId, positionId, task, at],
  )
  return plan
}

/** Whether a position was sealed for life at a moment. */
export async function isSealedAt(tx: SiteTx, positionId: string, at: Date): Promise<boolean> {
  const rows = await tx.sql(
    `select id from grease_plan where site_id = $1::uuid and position_id = $2::uuid and way = 'sealed'
       and created_at <= $3::timestamptz and (ended_at is null or ended_at > $3::timestamptz)`,
    [tx.scope.siteId, positionId, at],
  )
  return rows.length > 0
}

type PlanColumns = Omit<Prisma.GreasePlanUncheckedCreateInput, 'siteId'>

/**
 * Ends the position's plan of now of the same task and puts the new one in its place. Sealed for life ends all but turning,
 * and any way of lubrication ends sealed for life.
 */
export async function replacePlan(
  tx: SiteTx,
  plan: PlanColumns & { createdAt: Date; task: string | null },
): Promise<void> {
  const { siteId } = tx.scope
  const { positionId, task, createdAt } = plan
  const ended =
    task === null
      ? { OR: [{ task: null }, { task: { not: 'turn-shaft' } }] }
      : task === 'turn-shaft'
        ? { task }
        : { OR: [{ task }, { task: null }] }
  await tx.prisma.greasePlan.updateMany({
    where: { siteId, positionId, endedAt: null, ...ended },
    data: { endedAt: createdAt },
  })
  await tx.prisma.greasePlan.create({ data: { siteId, ...plan } })
}

/** Ends a plan without a new one; false where it had ended already. */
export async function endPlan(tx: SiteTx, id: string, endedAt: Date, endedReason: string): Promise<boolean> {
  const { siteId } = tx.scope
  const { count } = await tx.prisma.greasePlan.updateMany({
    where: { siteId, id, endedAt: null },
    data: { endedAt, endedReason },
  })
  return count > 0
}

export async function findGreaseName(tx: SiteTx, id: string): Promise<string | undefined> {
  const { siteId } = tx.scope
  const grease = await tx.prisma.grease.findUnique({ where: { siteId_id: { siteId, id } }, select: { name: true } })
  return grease?.name
}
