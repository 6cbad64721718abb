import type { PositionOverview } from '@shaftbook/contract/position-views'
import type { Sql } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'
import { shaftsOfArea } from './board-filters.ts'
import { present, selectJson, type StoredRow } from '../register/row.ts'
import type { Fields, RegisterTable } from '../register/table.ts'
import { areas, bearingTypes, machines, meters, positions, shafts } from '../register/tables.ts'

type Place = Pick<PositionOverview, 'position' | 'shaft' | 'machine' | 'area' | 'bearingType' | 'meter' | 'fittedType'>

interface PlaceRow {
  position: StoredRow
  shaft: StoredRow
  machine: StoredRow
  area: StoredRow
  bearing_type: StoredRow
  meter: StoredRow | null
  fitted_type: StoredRow | null
  last_read_at: Date | null
  last_total_hours: number | null
}

export type OverviewQuery = PageQuery & { readonly areaId?: string | undefined; readonly planned?: boolean | undefined }

/** A page of the positions in use, by tag: of an area, or those at which a mount is planned. */
export async function pageOfPositions(sql: Sql, siteId: string, query: OverviewQuery) {
  const where = Where.atSite('p', siteId).add(() => 'p.retired_at is null')
  // the parameter that atSite has placed
  where.addIf(query.areaId, (value) => `p.shaft_id in (${shaftsOfArea('$1', value)})`)
  if (query.planned)
    where.add(
      () =>
        `exists (select from mount_plan w where w.site_id = p.site_id and w.position_id = p.id and w.ended_at is null)`,
    )
  const sort = { column: 'p.tag', type: 'text', descending: false } as const
  return await readPage<{ id: string }>(sql, { select: 'p.id', from: 'position p', where, sort, id: 'p.id' }, query)
}

export async function positionExists(sql: Sql, siteId: string, id: string): Promise<boolean> {
  return (
    (await sql<{ id: string }>('select id from position where site_id = $1::uuid and id = $2::uuid', [siteId, id]))
      .length > 0
  )
}

/** The positions with all that they hang on, in no particular order. One statement. */
export async function findPlaces(sql: Sql, siteId: string, ids: readonly string[]): Promise<Place[]> {
  const rows = await sql<PlaceRow>(
    `select ${selectJson(positions, 'p')} as position, ${selectJson(shafts, 's')} as shaft,
       ${selectJson(machines, 'm')} as machine, ${selectJson(areas, 'a')} as area,
       ${selectJson(bearingTypes, 't')} as bearing_type, ${selectJson(bearingTypes, 'ft')} as fitted_type,
       ${selectJson(meters, 'h')} as meter, h.last_read_at, h.last_total_hours
     from position p
     join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
     join machine m on m.site_id = s.site_id and m.id = s.machine_id
     join area a on a.site_id = m.site_id and a.id = m.area_id
     join bearing_type t on t.site_id = p.site_id and t.id = p.bearing_type_id
     left join meter h on h.site_id = m.site_id and h.machine_id = m.id
     left join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
     left join bearing b on b.site_id = f.site_id and b.id = f.bearing_id
     left join bearing_type ft on ft.site_id = b.site_id and ft.id = b.bearing_type_id
     where p.site_id = $1::uuid and p.id = any($2::uuid[])`,
    [siteId, ids],
  )
  return rows.map(presentPlace)
}

function presentPlace(row: PlaceRow): Place {
  const meter = shown(meters, row.meter) as Place['meter']
  return {
    position: shown(positions, row.position) as Place['position'],
    shaft: shown(shafts, row.shaft) as Place['shaft'],
    machine: shown(machines, row.machine) as Place['machine'],
    area: shown(areas, row.area) as Place['area'],
    bearingType: shown(bearingTypes, row.bearing_type) as Place['bearingType'],
    fittedType: shown(bearingTypes, row.fitted_type) as Place['fittedType'],
    meter: meter && {
      ...meter,
      lastReadAt: row.last_read_at?.toISOString() ?? null,
      lastTotalHours: row.last_total_hours,
    },
  }
}

function shown(table: RegisterTable, row: StoredRow | null): Fields | null {
  return row && present(table, row)
}
