import type { Photo } from '@shaftbook/contract/photos'
import type { Sql, SiteTx } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'

/** A photo with the hash of its preview, which only the service needs. */
export type StoredPhoto = Photo & { readonly smallSha256: string; readonly addedById: string }
type Times = 'takenAt' | 'addedAt' | 'withdrawnAt'
type Raw = Omit<StoredPhoto, Times> & { takenAt: Date; addedAt: Date; withdrawnAt: Date | null }

const columns = `ph.id, ph.position_id as "positionId", p.tag, ph.subject_kind as "subjectKind",
  ph.subject_id as "subjectId", ph.step, ph.caption, ph.media_type as "mediaType", ph.sha256,
  ph.small_sha256 as "smallSha256", ph.width_px as "widthPx", ph.height_px as "heightPx", ph.size_bytes as "sizeBytes",
  ph.taken_at as "takenAt", ph.added_at as "addedAt", ph.added_by as "addedById", adder.name as "addedBy",
  ph.withdrawn_at as "withdrawnAt", withdrawer.name as "withdrawnBy", ph.withdrawn_reason as "withdrawnReason"`
const joins = `join position p on p.site_id = ph.site_id and p.id = ph.position_id
  join person adder on adder.id = ph.added_by
  left join person withdrawer on withdrawer.id = ph.withdrawn_by`

function present(row: Raw): StoredPhoto {
  return {
    ...row,
    takenAt: row.takenAt.toISOString(),
    addedAt: row.addedAt.toISOString(),
    withdrawnAt: row.withdrawnAt?.toISOString() ?? null,
  }
}

export interface PhotoQuery extends PageQuery {
  readonly positionId?: string | undefined
  readonly subjectId?: string | undefined
}

export async function listStoredPhotos(sql: Sql, siteId: string, query: PhotoQuery) {
  const where = Where.atSite('ph', siteId)
    .addIf(query.positionId, (id) => `ph.position_id = ${id}::uuid`)
    .addIf(query.subjectId, (id) => `ph.subject_id = ${id}::uuid`)
  const sort = { column: 'ph.taken_at', type: 'timestamptz', descending: true } as const
  const spec = { select: columns, from: 'photo ph', join: joins, where, sort, id: 'ph.id' }
  const { rows, nextCursor } = await readPage<Raw>(sql, spec, query)
  return { items: rows.map(present), nextCursor }
}

export async function findPhoto(sql: Sql, siteId: string, id: string): Promise<StoredPhoto | undefined> {
  const [row] = await sql<Raw>(
    `select ${columns} from photo ph ${joins} where ph.site_id = $1::uuid and ph.id = $2::uuid`,
    [siteId, id],
  )
  return row && present(row)
}

export async function hasPosition(sql: Sql, siteId: string, positionId: string): Promise<boolean> {
  const rows = await sql('select id from position where site_id = $1::uuid and id = $2::uuid', [siteId, positionId])
  return rows.length > 0
}

const recordTables = { mount: 'mount_record', removal: 'removal', greasing: 'greasing' } as const

/** The position of the record that a photo belongs to; undefined where the record is not there yet. */
export async function positionOfRecord(
  sql: Sql,
  siteId: string,
  kind: keyof typeof recordTables,
  id: string,
): Promise<string | undefined> {
  const [row] = await sql<{ positionId: string }>(
    `select position_id as "positionId" from ${recordTables[kind]} where site_id = $1::uuid and id = $2::uuid`,
    [siteId, id],
  )
  return row?.positionId
}

export interface NewPhotoRow {
  readonly id: string
  readonly positionId: string
  readonly subjectKind: string
  readonly subjectId: string
  readonly step: string
  readonly caption: string
  readonly mediaType: string
  readonly sha256: string
  readonly smallSha256: string
  readonly widthPx: number
  readonly heightPx: number
  readonly sizeBytes: number
  readonly takenAt: Date
  readonly addedAt: Date
  readonly addedBy: string
}

export async function insertPhoto(tx: SiteTx, row: NewPhotoRow): Promise<void> {
  await tx.prisma.photo.create({ data: { siteId: tx.scope.siteId, ...row } })
}

/** Marks a photo as withdrawn; false where it was withdrawn before. */
export async function markWithdrawn(tx: SiteTx, id: string, at: Date, by: string, reason: string): Promise<boolean> {
  const rows = await tx.sql(
    `update photo set withdrawn_at = $3, withdrawn_by = $4::uuid, withdrawn_reason = $5
     where site_id = $1::uuid and id = $2::uuid and withdrawn_at is null returning id`,
    [tx.scope.siteId, id, at, by, reason],
  )
  return rows.length > 0
}
