import type { TreeArea, TreeMachine } from '@shaftbook/contract/position-views'
import type { z } from 'zod'
import type { Sql } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'
import { isOpen } from '../flags/flags.store.ts'

export async function listAreas(sql: Sql, siteId: string, today: string): Promise<z.output<typeof TreeArea>[]> {
  return await sql(
    `select a.id, a.code, a.name,
       (select count(*)::int from machine m where m.site_id = a.site_id and m.area_id = a.id) as machines,
       (select count(*)::int from flag g where g.site_id = a.site_id and g.area_id = a.id and ${isOpen('g', '$2')})
         as "openFlags"
     from area a where a.site_id = $1::uuid order by a.walking_order, a.code`,
    [siteId, today],
  )
}

export async function areaExists(sql: Sql, siteId: string, id: string): Promise<boolean> {
  return (
    (await sql<{ id: string }>('select id from area where site_id = $1::uuid and id = $2::uuid', [siteId, id])).length >
    0
  )
}

type Machine = Omit<TreeMachine, 'shafts'>

export async function listMachines(
  sql: Sql,
  siteId: string,
  query: PageQuery & { areaId: string },
): Promise<{ rows: Machine[]; nextCursor: string | null }> {
  const spec = {
    select: 'm.id, m.tag, m.name, m.standby',
    from: 'machine m',
    where: Where.atSite('m', siteId).add((value) => `m.area_id = ${value(query.areaId)}::uuid`),
    sort: { column: 'm.tag', type: 'text', descending: false },
    id: 'm.id',
  } as const
  return await readPage<Machine>(sql, spec, query)
}

/** The shafts of these machines with their positions, in one statement. */
export async function shaftsOf(
  sql: Sql,
  siteId: string,
  machineIds: readonly string[],
  today: string,
): Promise<Map<string, TreeMachine['shafts']>> {
  const rows = await sql<TreeMachine['shafts'][number] & { machineId: string }>(
    `select s.machine_id as "machineId", s.id, s.code, s.name,
       coalesce((
         select jsonb_agg(jsonb_build_object('id', p.id, 'tag', p.tag, 'name', p.name, 'locating', p.locating,
           'designation', coalesce(fitted.designation, wanted.designation), 'verdict', r.verdict, 'openFlags',
           (select count(*) from flag g where g.site_id = p.site_id and g.position_id = p.id and ${isOpen('g', '$2')}))
           order by p.tag)
         from position p
         join bearing_type wanted on wanted.site_id = p.site_id and wanted.id = p.bearing_type_id
         left join fitment f on f.site_id = p.site_id and f.position_id = p.id and f.removed_at is null
         left join bearing b on b.site_id = f.site_id and b.id = f.bearing_id
         left join bearing_type fitted on fitted.site_id = b.site_id and fitted.id = b.bearing_type_id
         left join mount_record r on r.site_id = f.site_id and r.id = f.mount_record_id
         where p.site_id = s.site_id and p.shaft_id = s.id and p.retired_at is null
       ), '[]') as positions
     from shaft s where s.site_id = $1::uuid and s.machine_id = any($3::uuid[]) order by s.code, s.id`,
    [siteId, today, machineIds],
  )
  return Map.groupBy(rows, (row) => row.machineId)
}
