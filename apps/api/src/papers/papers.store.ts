import { mostLabels } from '@shaftbook/contract/papers'
import type { Sql } from '../db/database.ts'
import { contains } from '../db/list-page.ts'
import { positionsFound } from '../positions/board-filters.ts'

export interface LabelQuery {
  readonly ids?: readonly string[] | undefined
  readonly areaId?: string | undefined
  readonly machineId?: string | undefined
  readonly search?: string | undefined
}

export interface LabelRow {
  readonly tag: string
  readonly name: string
  readonly machineTag: string
  readonly machineName: string
}

/** Positions in service that labels are wanted for, by tag; one more than may be printed, so that too many are noticed. */
export async function findLabelled(sql: Sql, siteId: string, query: LabelQuery): Promise<LabelRow[]> {
  const { ids, areaId, machineId, search } = query
  return await sql<LabelRow>(
    `select p.tag, p.name, m.tag as "machineTag", m.name as "machineName"
     from position p
     join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
     join machine m on m.site_id = s.site_id and m.id = s.machine_id
     where p.site_id = $1::uuid and p.retired_at is null
       and ($2::uuid[] is null or p.id = any($2::uuid[]))
       and ($3::uuid is null or m.area_id = $3::uuid)
       and ($4::uuid is null or m.id = $4::uuid)
       and ($5::text is null or p.id in (${positionsFound('$1', '$5')}))
     order by p.tag limit ${mostLabels + 1}`,
    [siteId, ids ?? null, areaId ?? null, machineId ?? null, search ? contains(search.replaceAll(' ', '')) : null],
  )
}

export async function findGreaseName(sql: Sql, siteId: string, id: string | null): Promise<string | null> {
  if (id === null) return null
  const [grease] = await sql<{ name: string }>('select name from grease where site_id = $1::uuid and id = $2::uuid', [
    siteId,
    id,
  ])
  return grease?.name ?? null
}

/** The captions of a record's photos in the order they were taken; empty where there is none. Withdrawn ones are left out. */
export async function findPhotoCaptions(sql: Sql, siteId: string, recordId: string): Promise<string[]> {
  const rows = await sql<{ caption: string }>(
    `select caption from photo where site_id = $1::uuid and subject_id = $2::uuid and withdrawn_at is null
     order by taken_at, id`,
    [siteId, recordId],
  )
  return rows.map(({ caption }) => caption)
}
