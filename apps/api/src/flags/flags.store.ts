import type { Flag, FlagFacts, FlagKind } from '@shaftbook/contract/flags'
import type { SiteTx, Sql } from '../db/database.ts'
import { contains, readPage, Where, type PageQuery } from '../db/list-page.ts'

export type FlagQuery = PageQuery & {
  readonly kind?: FlagKind | undefined
  readonly areaId?: string | undefined
  readonly positionId?: string | undefined
  readonly state: 'open' | 'put-off' | 'cleared'
  readonly search?: string | undefined
}

interface FlagRow extends Omit<Flag, 'since' | 'clearedAt' | 'facts'> {
  since: Date
  clearedAt: Date | null
  facts: FlagFacts
}

const columns = `g.id, g.version, g.kind, g.position_id as "positionId", g.shaft_id as "shaftId", p.tag,
  m.id as "machineId", m.tag as "machineTag", m.name as "machineName", s.name as "shaftName", g.area_id as "areaId", a.name as "areaName",
  g.since, g.facts, g.put_off_until::text as "putOffUntil", g.put_off_reason as "putOffReason",
  g.cleared_at as "clearedAt", g.cleared_how as "clearedHow"`

const places = `left join position p on p.site_id = g.site_id and p.id = g.position_id
  join shaft s on s.site_id = g.site_id and s.id = coalesce(g.shaft_id, p.shaft_id)
  join machine m on m.site_id = s.site_id and m.id = s.machine_id
  join area a on a.site_id = g.site_id and a.id = g.area_id`

/** An open flag of the alias, one that is not put off beyond today. */
export function isOpen(alias: string, today: string): string {
  return `${alias}.cleared_at is null and (${alias}.put_off_until is null or ${alias}.put_off_until <= ${today}::date)`
}

/** Open and put-off flags with the most pressing first; cleared ones with the newest first. */
export async function listFlags(
  sql: Sql,
  siteId: string,
  query: FlagQuery,
  today: string,
): Promise<{ items: Flag[]; nextCursor: string | null }> {
  const where = Where.atSite('g', siteId)
    .addIf(query.kind, (value) => `g.kind = ${value}`)
    .addIf(query.areaId, (value) => `g.area_id = ${value}::uuid`)
    .addIf(query.positionId, (value) => `g.position_id = ${value}::uuid`)
  if (query.state === 'open') where.add((value) => isOpen('g', value(today)))
  if (query.state === 'put-off')
    where.add((value) => `g.cleared_at is null and g.put_off_until > ${value(today)}::date`)
  if (query.state === 'cleared') where.add(() => 'g.cleared_at is not null')
  if (query.search) {
    const pattern = where.parameter(contains(query.search))
    where.add(
      () => `(g.position_id in (${positionsNamed('$1', pattern)}) or g.shaft_id in (${shaftsNamed('$1', pattern)}))`,
    )
  }
  const sort =
    query.state === 'cleared'
      ? ({ column: 'g.cleared_at', type: 'timestamptz', descending: true } as const)
      : ({ column: 'g.urgency', type: 'float8', descending: true } as const)
  const { rows, nextCursor } = await readPage<FlagRow>(
    sql,
    { select: columns, from: 'flag g', join: places, where, sort, id: 'g.id' },
    query,
  )
  return { items: rows.map(present), nextCursor }
}

function shaftsNamed(site: string, pattern: string): string {
  return `select s.id from machine m join shaft s on s.site_id = m.site_id and s.machine_id = m.id
    where m.site_id = ${site}::uuid and (m.tag ilike ${pattern} or m.name ilike ${pattern} or s.name ilike ${pattern})`
}

function positionsNamed(site: string, pattern: string): string {
  return `select o.id from position o where o.site_id = ${site}::uuid and (o.tag ilike ${pattern}
    or o.shaft_id in (${shaftsNamed(site, pattern)}))`
}

/** The flags of these positions and shafts that are not cleared, the most pressing first. */
export async function flagsAt(
  sql: Sql,
  siteId: string,
  positionIds: readonly string[],
  shaftIds: readonly string[],
): Promise<Flag[]> {
  const rows = await sql<FlagRow>(
    `select ${columns} from (
       select * from flag where site_id = $1::uuid and position_id = any($2::uuid[]) and cleared_at is null
       union all
       select * from flag where site_id = $1::uuid and shaft_id = any($3::uuid[]) and cleared_at is null
     ) g ${places} order by g.urgency desc, g.id desc`,
    [siteId, positionIds, shaftIds],
  )
  return rows.map(present)
}

export async function findFlag(sql: Sql, siteId: string, id: string): Promise<Flag | undefined> {
  const [row] = await sql<FlagRow>(
    `select ${columns} from flag g ${places} where g.site_id = $1::uuid and g.id = $2::uuid`,
    [siteId, id],
  )
  return row && present(row)
}

export async function countFlags(
  sql: Sql,
  siteId: string,
  today: string,
): Promise<{ kind: FlagKind; open: number; putOff: number }[]> {
  return await sql(
    `select g.kind, count(*) filter (where g.put_off_until is null or g.put_off_until <= $2::date)::int as open,
       count(*) filter (where g.put_off_until > $2::date)::int as "putOff"
     from flag g where g.site_id = $1::uuid and g.cleared_at is null group by g.kind order by max(g.urgency) desc`,
    [siteId, today],
  )
}

/** True where the flag still had this version. */
export async function putOff(
  { prisma, scope }: SiteTx,
  wanted: { id: string; version: number; until: string; reason: string },
): Promise<boolean> {
  const { id, version, until, reason } = wanted
  const changed = await prisma.flag.updateMany({
    where: { siteId: scope.siteId, id, version, clearedAt: null },
    data: { putOffUntil: new Date(until), putOffReason: reason, putOffBy: scope.personId },
  })
  return changed.count === 1
}

function present(row: FlagRow): Flag {
  return { ...row, since: row.since.toISOString(), clearedAt: row.clearedAt?.toISOString() ?? null }
}
