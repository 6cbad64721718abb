import type { MountListItem } from '@shaftbook/contract/mounts'
import type { Sql } from '../db/database.ts'
import { contains, readPage, Where, type PageQuery } from '../db/list-page.ts'
import { umFromNm } from '../db/units.ts'

export interface MountQuery extends PageQuery {
  readonly positionId?: string | undefined
  readonly areaId?: string | undefined
  readonly verdict?: string | undefined
  readonly state?: 'draft' | 'signed' | undefined
  readonly search?: string | undefined
}

type InUm = 'mountedAt' | 'reductionUm' | 'bandMinUm' | 'bandMaxUm'
interface MountRow extends Omit<MountListItem, InUm> {
  mountedAt: Date
  reductionNm: number | null
  bandMinNm: number | null
  bandMaxNm: number | null
}

const select = `m.id, m.position_id as "positionId", p.tag, machine.name as "machineName", a.name as "areaName", t.designation,
  m.mounted_at as "mountedAt", m.fitter, m.reduction_nm as "reductionNm", m.band_min_nm as "bandMinNm",
  m.band_max_nm as "bandMaxNm", m.verdict, m.residual, m.signed_at is not null as signed, m.corrects_id as "correctsId"`
const from = `mount_record m
  join position p on p.site_id = m.site_id and p.id = m.position_id
  join shaft s on s.site_id = p.site_id and s.id = p.shaft_id
  join machine on machine.site_id = s.site_id and machine.id = s.machine_id
  join area a on a.site_id = machine.site_id and a.id = machine.area_id
  join bearing b on b.site_id = m.site_id and b.id = m.bearing_id
  join bearing_type t on t.site_id = b.site_id and t.id = b.bearing_type_id`
const searched = ['p.tag', 'machine.tag', 'machine.name', 't.designation', 'b.serial', 'm.fitter']

/** Mount records, newest first, without those that were corrected. */
export async function listRecords(sql: Sql, siteId: string, query: MountQuery) {
  const where = new Where()
    .add((value) => `m.site_id = ${value(siteId)}::uuid`)
    .add(() => 'not exists (select from mount_record c where c.site_id = m.site_id and c.corrects_id = m.id)')
    .addIf(query.positionId, (id) => `m.position_id = ${id}::uuid`)
    .addIf(query.areaId, (id) => `a.id = ${id}::uuid`)
    .addIf(query.verdict, (verdict) => `m.verdict = ${verdict}`)
    .addIf(query.search === undefined || query.search === '' ? undefined : contains(query.search), (text) => {
      return `(${searched.map((column) => `${column} ilike ${text}`).join(' or ')})`
    })
  if (query.state !== undefined) where.add(() => `m.signed_at is ${query.state === 'signed' ? 'not null' : 'null'}`)
  const sort = { column: 'm.mounted_at', type: 'timestamptz', descending: true } as const
  const { rows, nextCursor } = await readPage<MountRow>(sql, { select, from, where, sort, id: 'm.id' }, query)
  return { items: rows.map((row) => present(row)), nextCursor }
}

function present({ mountedAt, reductionNm, bandMinNm, bandMaxNm, ...row }: MountRow): MountListItem {
  return {
    ...row,
    mountedAt: mountedAt.toISOString(),
    reductionUm: umFromNm(reductionNm),
    bandMinUm: umFromNm(bandMinNm),
    bandMaxUm: umFromNm(bandMaxNm),
  }
}
