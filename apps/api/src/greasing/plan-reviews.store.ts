import type { PlanReview } from '@shaftbook/contract/grease-plans'
import type { Sql } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'

const columns = `v.id, v.plan_id as "planId", v.reason, v.review_on::text as "reviewOn",
  v.computed_interval_hours as "computedIntervalHours", v.computed_dose_g as "computedDoseG", v.decided_at as "decidedAt",
  person.name as "decidedBy"`
const tables = 'plan_review v join person on person.id = v.decided_by'

type ReviewRow = Omit<PlanReview, 'decidedAt'> & { decidedAt: Date }

function present(row: ReviewRow): PlanReview {
  return { ...row, decidedAt: row.decidedAt.toISOString() }
}

export async function listReviews(sql: Sql, siteId: string, query: PageQuery & { planId?: string | undefined }) {
  const where = new Where()
    .add((value) => `v.site_id = ${value(siteId)}::uuid`)
    .addIf(query.planId, (id) => `v.plan_id = ${id}::uuid`)
  const sort = { column: 'v.decided_at', type: 'timestamptz', descending: true } as const
  const spec = { select: columns, from: tables, where, sort, id: 'v.id' }
  const { rows, nextCursor } = await readPage<ReviewRow>(sql, spec, query)
  return { items: rows.map(present), nextCursor }
}

export async function findReview(sql: Sql, siteId: string, id: string): Promise<PlanReview | undefined> {
  const [row] = await sql<ReviewRow>(
    `select ${columns} from ${tables} where v.site_id = $1::uuid and v.id = $2::uuid`,
    [siteId, id],
  )
  return row && present(row)
}
