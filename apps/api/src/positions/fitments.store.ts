import type { Fitment, PositionHistory } from '@shaftbook/contract/position-views'
import { failureModeByClause } from '@shaftbook/standards/failure-modes'
import type { Sql } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'
import { umFromNm } from '../db/units.ts'

export type FitmentQuery = PageQuery & {
  readonly positionId?: string | undefined
  readonly bearingId?: string | undefined
  readonly open?: 'true' | 'false' | undefined
}

interface FitmentRow extends Omit<Fitment, 'fittedAt' | 'removedAt' | 'reductionUm' | 'modeTerm'> {
  fittedAt: Date
  removedAt: Date | null
  reductionNm: number | null
}

const columns = `f.id, f.position_id as "positionId", f.bearing_id as "bearingId", t.designation, b.serial,
  f.fitted_at as "fittedAt", f.removed_at as "removedAt", f.run_hours as "runHours", f.hours_source as "hoursSource",
  f.entry_age_hours as "entryAgeHours", f.mount_record_id as "mountRecordId", r.verdict, r.residual,
  r.reduction_nm as "reductionNm", f.removal_id as "removalId", x.end_kind as "endKind", x.mode_clause as "modeClause",
  x.cause`

const tables = `fitment f
  join bearing b on b.site_id = f.site_id and b.id = f.bearing_id
  join bearing_type t on t.site_id = b.site_id and t.id = b.bearing_type_id
  left join mount_record r on r.site_id = f.site_id and r.id = f.mount_record_id
  left join removal x on x.site_id = f.site_id and x.id = f.removal_id`

export async function listFitments(
  sql: Sql,
  siteId: string,
  query: FitmentQuery,
): Promise<{ items: Fitment[]; nextCursor: string | null }> {
  const where = Where.atSite('f', siteId)
    .addIf(query.positionId, (value) => `f.position_id = ${value}::uuid`)
    .addIf(query.bearingId, (value) => `f.bearing_id = ${value}::uuid`)
  if (query.open !== undefined) where.add(() => `f.removed_at is ${query.open === 'true' ? '' : 'not'} null`)
  const spec = {
    select: columns,
    from: tables,
    where,
    sort: { column: 'f.fitted_at', type: 'timestamptz', descending: true },
    id: 'f.id',
  } as const
  const { rows, nextCursor } = await readPage<FitmentRow>(sql, spec, query)
  return { items: rows.map(present), nextCursor }
}

export async function findFitment(sql: Sql, siteId: string, id: string): Promise<Fitment | undefined> {
  return (await fitmentsWhere(sql, siteId, 'f.id = $2::uuid', id))[0]
}

/** What is fitted at these positions now. */
export async function openFitmentsAt(sql: Sql, siteId: string, positionIds: readonly string[]): Promise<Fitment[]> {
  return await fitmentsWhere(sql, siteId, 'f.position_id = any($2::uuid[]) and f.removed_at is null', positionIds)
}

/** Every stay at these positions, the newest first. */
export async function fitmentsAt(sql: Sql, siteId: string, positionIds: readonly string[]): Promise<Fitment[]> {
  return await fitmentsWhere(sql, siteId, 'f.position_id = any($2::uuid[])', positionIds)
}

async function fitmentsWhere(sql: Sql, siteId: string, condition: string, id: unknown): Promise<Fitment[]> {
  const rows = await sql<FitmentRow>(
    `select ${columns} from ${tables} where f.site_id = $1::uuid and ${condition} order by f.fitted_at desc`,
    [siteId, id],
  )
  return rows.map(present)
}

function present({ reductionNm, ...row }: FitmentRow): Fitment {
  const mode = row.modeClause === null ? undefined : failureModeByClause(row.modeClause)
  return {
    ...row,
    fittedAt: row.fittedAt.toISOString(),
    removedAt: row.removedAt?.toISOString() ?? null,
    reductionUm: umFromNm(reductionNm),
    modeTerm: mode?.found ? mode.row.term : null,
  }
}

type DrawnGreasing = PositionHistory['greasings'][number]

/** The newest greasings of each of these positions that count, neither corrected nor withdrawn; one more than `newest` where there are more. */
export async function greasingsAt(
  sql: Sql,
  siteId: string,
  positionIds: readonly string[],
  newest: number,
): Promise<(DrawnGreasing & { positionId: string })[]> {
  const rows = await sql<Omit<DrawnGreasing, 'greasedAt'> & { greasedAt: Date; positionId: string }>(
    `select g.* from unnest($2::uuid[]) as wanted (id)
     cross join lateral (
       select g.id, g.position_id as "positionId", g.greased_at as "greasedAt", g.dose_g as "doseG",
         coalesce(w.window_result, 'no-window') as "windowResult"
       from greasing g
       left join greasing_window w on w.site_id = g.site_id and w.id = g.id
       where g.site_id = $1::uuid and g.position_id = wanted.id and not g.withdrawn and g.dose_g is not null
         and not exists (select from greasing c where c.site_id = g.site_id and c.corrects_id = g.id)
       order by g.greased_at desc, g.id desc limit $3
     ) g`,
    [siteId, positionIds, newest + 1],
  )
  return rows.map((row) => ({ ...row, greasedAt: row.greasedAt.toISOString() }))
}
