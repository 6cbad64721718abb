import type { PositionListItem } from '@shaftbook/contract/position-views'
import type { Sql } from '../db/database.ts'
import { contains, readPage, Where, type PageQuery } from '../db/list-page.ts'
import { isOpen } from '../flags/flags.store.ts'

export type BoardQuery = PageQuery & {
  readonly search?: string | undefined
  readonly areaId?: string | undefined
  readonly machineId?: string | undefined
  readonly verdict?: string | undefined
  readonly dueState?: string | undefined
  readonly sort: 'tag' | '-tag' | 'dueOn' | '-dueOn'
}

interface BoardRow extends Omit<PositionListItem, 'fittedAt'> {
  fittedAt: Date | null
}

const tables = `position p
  join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
  join machine m on m.site_id = s.site_id and m.id = s.machine_id
  join area a on a.site_id = m.site_id and a.id = m.area_id
  join bearing_type wanted on wanted.site_id = p.site_id and wanted.id = p.bearing_type_id
  left join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
  left join bearing b on b.site_id = f.site_id and b.id = f.bearing_id
  left join bearing_type fitted on fitted.site_id = b.site_id and fitted.id = b.bearing_type_id
  left join mount_record r on r.site_id = f.site_id and r.id = f.mount_record_id
  left join grease_due d on d.site_id = p.site_id and d.position_id = p.id`

/** One page of the board in one statement. */
export async function listBoard(
  sql: Sql,
  siteId: string,
  query: BoardQuery,
  today: string,
): Promise<{ items: PositionListItem[]; nextCursor: string | null }> {
  const where = Where.atSite('p', siteId)
  const day = where.parameter(today)
  where
    .addIf(query.areaId, (value) => `m.area_id = ${value}::uuid`)
    .addIf(query.machineId, (value) => `s.machine_id = ${value}::uuid`)
    .addIf(query.verdict, (value) => `r.verdict = ${value}`)
    .addIf(query.dueState, (value) => `d.state = ${value}`)
  if (query.search) where.add((value) => matches(value(contains((query.search as string).replaceAll(' ', '')))))
  const select = `p.id, p.tag, p.name, p.locating, a.id as "areaId", a.name as "areaName", m.id as "machineId",
    m.tag as "machineTag", m.name as "machineName", s.id as "shaftId", s.name as "shaftName",
    coalesce(fitted.designation, wanted.designation) as designation, f.fitted_at as "fittedAt", r.verdict, r.residual,
    d.due_on::text as "dueOn", d.state as "dueState", p.retired_at is not null as retired,
    (select count(*)::int from flag g where g.site_id = p.site_id and g.position_id = p.id and ${isOpen('g', day)})
      as "openFlags"`
  const spec = { select, from: tables, where, sort: sortOf(query.sort), id: 'p.id' }
  const { rows, nextCursor } = await readPage<BoardRow>(sql, spec, query)
  return { items: rows.map((row) => ({ ...row, fittedAt: row.fittedAt?.toISOString() ?? null })), nextCursor }
}

/** The tag, the machine, the bearing (its serial too) or a part of the kit; codes are found with spaces and without. */
function matches(pattern: string): string {
  const own = ['p.tag', 'p.name', 'm.tag', 'm.name', 'wanted.designation', 'fitted.designation', 'b.serial']
  const holds = (column: string): string => `replace(${column}, ' ', '') ilike ${pattern}`
  return `(${own.map(holds).join(' or ')} or p.kit_id in (
    select line.kit_id from part join kit_line line on line.site_id = part.site_id and line.part_id = part.id
    where ${holds('part.number')} or ${holds('part.designation')}))`
}

/** Positions without a due date come last, whichever way the dates run. */
function sortOf(sort: BoardQuery['sort']) {
  const descending = sort.startsWith('-')
  if (sort.endsWith('tag')) return { column: 'p.tag', type: 'text', descending } as const
  const last = descending ? '-infinity' : 'infinity'
  return { column: `coalesce(d.due_on, '${last}'::date)`, type: 'date', descending } as const
}
