import type { PositionListItem } from '@shaftbook/contract/position-views'
import type { Sql } from '../db/database.ts'
import { contains, readPage, Where, type PageQuery } from '../db/list-page.ts'
import { isOpen } from '../flags/flags.store.ts'
import {
  positionsByDueState,
  positionsByVerdict,
  positionsFound,
  shaftsOfArea,
  shaftsOfMachine,
} from './board-filters.ts'

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

/** The task of a position that is due first. */
const firstDue = `left join lateral (
    select d.due_on, d.state from grease_due d where d.site_id = p.site_id and d.position_id = p.id
    order by d.due_on, d.id limit 1) d on true`
/** What a line shows beside the position itself. */
const shown = `join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
  join machine m on m.site_id = s.site_id and m.id = s.machine_id
  join area a on a.site_id = m.site_id and a.id = m.area_id
  join bearing_type wanted on wanted.site_id = p.site_id and wanted.id = p.bearing_type_id
  left join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
  left join bearing b on b.site_id = f.site_id and b.id = f.bearing_id
  left join bearing_type fitted on fitted.site_id = b.site_id and fitted.id = b.bearing_type_id
  left join mount_record r on r.site_id = f.site_id and r.id = f.mount_record_id
  ${firstDue}`

/** One page of the board in one statement. */
export async function listBoard(
  sql: Sql,
  siteId: string,
  query: BoardQuery,
  today: string,
): Promise<{ items: PositionListItem[]; nextCursor: string | null }> {
  const where = Where.atSite('p', siteId)
  // the parameter that atSite has placed
  const site = '$1'
  const day = where.parameter(today)
  where
    .addIf(query.areaId, (value) => `p.shaft_id in (${shaftsOfArea(site, value)})`)
    .addIf(query.machineId, (value) => `p.shaft_id in (${shaftsOfMachine(site, value)})`)
    .addIf(query.verdict, (value) => `p.id in (${positionsByVerdict(site, value)})`)
    .addIf(query.dueState, (value) => `p.id in (${positionsByDueState(site, value)})`)
  if (query.search) {
    const pattern = where.parameter(contains(query.search.replaceAll(' ', '')))
    where.add(() => `p.id in (${positionsFound(site, pattern)})`)
  }
  const select = `p.id, p.tag, p.name, p.locating, a.id as "areaId", a.name as "areaName", m.id as "machineId",
    m.tag as "machineTag", m.name as "machineName", s.id as "shaftId", s.name as "shaftName",
    coalesce(fitted.designation, wanted.designation) as designation, f.fitted_at as "fittedAt", r.verdict, r.residual,
    d.due_on::text as "dueOn", d.state as "dueState",
    exists (select from grease_plan q where q.site_id = p.site_id and q.position_id = p.id and q.way = 'sealed'
      and q.ended_at is null) as "sealedForLife", p.retired_at is not null as retired,
    (select count(*)::int from flag g where g.site_id = p.site_id and g.position_id = p.id and ${isOpen('g', day)})
      as "openFlags"`
  const byDue = query.sort.endsWith('dueOn')
  const from = byDue ? `position p ${firstDue}` : 'position p'
  const spec = { select, from, join: shown, where, sort: sortOf(query.sort), id: 'p.id' }
  const { rows, nextCursor } = await readPage<BoardRow>(sql, spec, query)
  return { items: rows.map((row) => ({ ...row, fittedAt: row.fittedAt?.toISOString() ?? null })), nextCursor }
}

/** Positions without a due date come last, whichever way the dates run. */
function sortOf(sort: BoardQuery['sort']) {
  const descending = sort.startsWith('-')
  if (sort.endsWith('tag')) return { column: 'p.tag', type: 'text', descending } as const
  const last = descending ? '-infinity' : 'infinity'
  return { column: `coalesce(d.due_on, '${last}'::date)`, type: 'date', descending } as const
}
