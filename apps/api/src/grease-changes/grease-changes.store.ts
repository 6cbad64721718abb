import type { GreaseChange } from '@shaftbook/contract/grease-changes'
import type { Sql, SiteTx } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'

const columns = `x.id, x.version, x.position_id as "positionId", p.tag, x.from_grease_id as "fromGreaseId",
  was.name as "fromName", x.to_grease_id as "toGreaseId", becomes.name as "toName", x.way, x.state, x.reason,
  x.doses_left as "dosesLeft", case when x.state = 'flush' then d.due_on::text end as "nextFlushOn",
  x.started_at as "startedAt", person.name as "startedBy", x.ended_at as "endedAt", x.note`
const tables = `grease_change x
  join position p on p.site_id = x.site_id and p.id = x.position_id
  join grease was on was.site_id = x.site_id and was.id = x.from_grease_id
  join grease becomes on becomes.site_id = x.site_id and becomes.id = x.to_grease_id
  join person on person.id = x.started_by
  left join grease_due d on d.site_id = x.site_id and d.position_id = x.position_id and d.task = 'regrease'`

type ChangeRow = Omit<GreaseChange, 'startedAt' | 'endedAt'> & { startedAt: Date; endedAt: Date | null }

function present({ startedAt, endedAt, ...row }: ChangeRow): GreaseChange {
  return { ...row, startedAt: startedAt.toISOString(), endedAt: endedAt?.toISOString() ?? null }
}

export interface ChangeQuery extends PageQuery {
  readonly positionId?: string | undefined
  readonly open?: boolean | undefined
}

export async function listChanges(sql: Sql, siteId: string, query: ChangeQuery) {
  const where = new Where()
    .add((value) => `x.site_id = ${value(siteId)}::uuid`)
    .addIf(query.positionId, (id) => `x.position_id = ${id}::uuid`)
  if (query.open !== undefined) where.add(() => `(x.ended_at is null) = ${query.open}`)
  const sort = { column: 'x.started_at', type: 'timestamptz', descending: true } as const
  const spec = { select: columns, from: tables, where, sort, id: 'x.id' }
  const { rows, nextCursor } = await readPage<ChangeRow>(sql, spec, query)
  return { items: rows.map(present), nextCursor }
}

export async function findChange(sql: Sql, siteId: string, id: string): Promise<GreaseChange | undefined> {
  const [row] = await sql<ChangeRow>(
    `select ${columns} from ${tables} where x.site_id = $1::uuid and x.id = $2::uuid`,
    [siteId, id],
  )
  return row && present(row)
}

export interface OpenChange {
  readonly id: string
  readonly state: 'lab' | 'strip' | 'flush'
  readonly fromName: string
  readonly toGreaseId: string
  readonly toName: string
  readonly planBeforeId: string
  readonly startedAt: Date
  readonly stateSince: Date
}

/** The change-over that a position is in. */
export async function findOpenChange({ sql, scope }: SiteTx, positionId: string): Promise<OpenChange | undefined> {
  const [row] = await sql<OpenChange>(
    `select x.id, x.state, was.name as "fromName", x.to_grease_id as "toGreaseId", becomes.name as "toName",
       x.plan_before_id as "planBeforeId", x.started_at as "startedAt", x.state_since as "stateSince"
     from grease_change x
     join grease was on was.site_id = x.site_id and was.id = x.from_grease_id
     join grease becomes on becomes.site_id = x.site_id and becomes.id = x.to_grease_id
     where x.site_id = $1::uuid and x.position_id = $2::uuid and x.ended_at is null`,
    [scope.siteId, positionId],
  )
  return row
}

/** How often the new grease was given since a moment: by gun, and as a first fill. */
export async function countGiven(
  { sql, scope }: SiteTx,
  positionId: string,
  greaseId: string,
  since: Date,
): Promise<{ doses: number; fills: number }> {
  const [row] = await sql<{ doses: number; fills: number }>(
    `select count(*) filter (where g.kind = 'regreasing')::int as doses,
       count(*) filter (where g.kind = 'initial-fill')::int as fills
     from greasing g
     where g.site_id = $1::uuid and g.position_id = $2::uuid and g.grease_id = $3::uuid and g.greased_at >= $4::timestamptz
       and not g.withdrawn
       and not exists (select from greasing c where c.site_id = g.site_id and c.corrects_id = g.id)`,
    [scope.siteId, positionId, greaseId, since],
  )
  return row ?? { doses: 0, fills: 0 }
}
