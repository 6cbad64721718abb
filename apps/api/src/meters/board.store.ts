import type { MeterBoardItem } from '@shaftbook/contract/meter-board'
import type { Sql } from '../db/database.ts'
import { contains, readPage, Where, type PageQuery } from '../db/list-page.ts'

type BoardRow = Omit<MeterBoardItem, 'lastReadAt'> & { lastReadAt: Date | null }

const columns = `meter.id, meter.name, m.id as "machineId", m.tag as "machineTag", m.name as "machineName", a.name as "areaName",
  meter.rollover_at_hours as "rolloverAtHours", meter.last_read_at as "lastReadAt", (
    select coalesce(r.new_meter_shows_hours, r.shown_hours) from meter_reading r
    where r.site_id = meter.site_id and r.meter_id = meter.id
      and not exists (select from meter_reading c where c.site_id = r.site_id and c.corrects_id = r.id)
    order by r.read_at desc, r.created_at desc limit 1) as "lastShownHours"`
const tables = `meter
  join machine m on m.site_id = meter.site_id and m.id = meter.machine_id
  join area a on a.site_id = m.site_id and a.id = m.area_id`
const searched = ['m.tag', 'm.name', 'meter.name']

/** Hour meters by the tag of their machine, each with what it showed last. */
export async function listBoard(sql: Sql, siteId: string, query: PageQuery & { search?: string | undefined }) {
  const wanted = query.search === undefined || query.search === '' ? undefined : contains(query.search)
  const where = Where.atSite('m', siteId)
    .add((value) => `meter.site_id = ${value(siteId)}::uuid`)
    .addIf(wanted, (text) => `(${searched.map((column) => `${column} ilike ${text}`).join(' or ')})`)
  const sort = { column: 'm.tag', type: 'text', descending: false } as const
  const spec = { select: columns, from: tables, where, sort, id: 'meter.id' }
  const { rows, nextCursor } = await readPage<BoardRow>(sql, spec, query)
  return {
    items: rows.map((row) => ({ ...row, lastReadAt: row.lastReadAt?.toISOString() ?? null })),
    nextCursor,
  }
}
