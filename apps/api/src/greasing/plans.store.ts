import type { GreasePlan } from '@shaftbook/contract/greasing'
import type { Prisma } from '../../../../prisma/client/client.ts'
import type { Sql, SiteTx } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'

const columns = `plan.id, plan.version, plan.created_at as "createdAt", plan.updated_at as "updatedAt",
  plan.position_id as "positionId", plan.grease_id as "greaseId", plan.entry, plan.dose_g as "doseG",
  plan.interval_hours as "intervalHours", plan.calendar_months as "calendarMonths", plan.source, plan.reason, plan.duty,
  grease.name as "greaseName", plan.ended_at as "endedAt"`
const tables = 'grease_plan plan join grease on grease.site_id = plan.site_id and grease.id = plan.grease_id'

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

export async function listPlans(sql: Sql, siteId: string, query: PageQuery & { positionId?: string | undefined }) {
  const where = new Where()
    .add((value) => `plan.site_id = ${value(siteId)}::uuid`)
    .addIf(query.positionId, (id) => `plan.position_id = ${id}::uuid`)
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
  readonly greaseId: string
  readonly greaseName: string
  readonly doseG: number
  readonly intervalHours: number
  readonly calendarMonths: number
}

/** The plan that was in force at a moment; before there was any, the first one, since nobody had written it down yet. */
export async function findPlanAt(tx: SiteTx, positionId: string, at: Date): Promise<PlanInForce | undefined> {
  const [plan] = await tx.sql<PlanInForce>(
    `select plan.id, plan.grease_id as "greaseId", grease.name as "greaseName", plan.dose_g as "doseG",
       plan.interval_hours as "intervalHours", plan.calendar_months as "calendarMonths"
     from ${tables}
     where plan.site_id = $1::uuid and plan.position_id = $2::uuid and (plan.ended_at is null or plan.ended_at > $3::timestamptz)
     order by plan.created_at limit 1`,
    [tx.scope.siteId, positionId, at],
  )
  return plan
}

export interface NewPlanRow {
  readonly id: string
  readonly positionId: string
  readonly greaseId: string
  readonly entry: string
  readonly doseG: number
  readonly intervalHours: number
  readonly calendarMonths: number
  readonly source: string
  readonly reason: string
  readonly duty: Prisma.InputJsonObject
  readonly createdAt: Date
}

/** Ends the position's plan of now and puts the new one in its place. */
export async function replacePlan(tx: SiteTx, plan: NewPlanRow): Promise<void> {
  const { siteId } = tx.scope
  await tx.prisma.greasePlan.updateMany({
    where: { siteId, positionId: plan.positionId, endedAt: null },
    data: { endedAt: plan.createdAt },
  })
  await tx.prisma.greasePlan.create({ data: { siteId, ...plan } })
}

export async function findGreaseName(tx: SiteTx, id: string): Promise<string | undefined> {
  const { siteId } = tx.scope
  const grease = await tx.prisma.grease.findUnique({ where: { siteId_id: { siteId, id } }, select: { name: true } })
  return grease?.name
}
