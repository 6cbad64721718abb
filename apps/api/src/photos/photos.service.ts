import { createHash } from 'node:crypto'
import type { NewPhoto, Photo } from '@shaftbook/contract/photos'
import { engineering } from '@shaftbook/contract/roles'
import type { Context } from '../context.ts'
import type { Sql } from '../db/database.ts'
import { receive } from '../db/receipts.ts'
import { DomainError, fieldError, notFound } from '../domain-error.ts'
import { FileReply } from '../http/files.ts'
import { doWork, type Work, type Worker } from '../meters/work.ts'
import { photoKey, type PhotoStore } from './photo-store.ts'
import {
  findPhoto,
  hasPosition,
  insertPhoto,
  listStoredPhotos,
  markWithdrawn,
  positionOfRecord,
  type PhotoQuery,
  type StoredPhoto,
} from './photos.store.ts'
import { preparePicture, type PreparedPhoto } from './prepare-picture.ts'
import { notWhole } from './storage-error.ts'

/** What the photos need beside the database. */
export interface PhotoContext extends Context {
  readonly store: PhotoStore
}

/**
 * Adds a photo. Its bytes are stored before the row that speaks of them: cut off between the two, there are bytes that nothing
 * names, never a photo without a picture.
 */
export async function addPhoto(context: PhotoContext, worker: Worker, told: NewPhoto, sent: Buffer): Promise<Photo> {
  const request = { ...told, sentSha256: sha256Of(sent) }
  const prepared = (await isNew(context, worker, told)) ? await storePicture(context, worker, sent) : undefined
  const added = await doWork(context, worker, async (work) => {
    if ((await receive(work.tx, 'add-photo', told.id, request)) === 'new') await addRow(work, told, prepared)
    return await photo(work.tx.sql, work.tx.scope.siteId, told.id)
  })
  return shown(added)
}

/** Refuses what needs no look at the picture; false where the photo was added before. */
async function isNew({ db }: PhotoContext, { scope }: Worker, told: NewPhoto): Promise<boolean> {
  const { id, positionId, subjectKind, subjectId } = told
  return await db.readSite(scope, async (sql) => {
    if ((await findPhoto(sql, scope.siteId, id)) !== undefined) return false
    if (!(await hasPosition(sql, scope.siteId, positionId))) throw notFound('position', 'positionId')
    const at =
      subjectKind === 'position' ? subjectId : await positionOfRecord(sql, scope.siteId, subjectKind, subjectId)
    if (at !== undefined && at !== positionId) {
      const message =
        subjectKind === 'position'
          ? 'A photo of the position itself names that position twice.'
          : 'The record that this photo belongs to is of another position: add the photo there.'
      throw fieldError('not-allowed-here', 'subjectId', message)
    }
    return true
  })
}

async function storePicture({ store, config }: PhotoContext, { scope }: Worker, sent: Buffer): Promise<PreparedPhoto> {
  const prepared = await preparePicture(sent, config.photoMaxPixels)
  for (const { sha256, bytes } of [prepared.small, prepared.full])
    await store.put(photoKey(scope.siteId, sha256), bytes)
  return prepared
}

async function addRow(work: Work, told: NewPhoto, prepared: PreparedPhoto | undefined): Promise<void> {
  // a photo is never taken away, so one that was there when we looked has left its receipt
  if (prepared === undefined) throw new TypeError('a photo without a receipt')
  const { full, small } = prepared
  await insertPhoto(work.tx, {
    ...told,
    takenAt: takenAtOf(told, work.now),
    mediaType: 'image/jpeg',
    sha256: full.sha256,
    smallSha256: small.sha256,
    widthPx: full.widthPx,
    heightPx: full.heightPx,
    sizeBytes: full.bytes.length,
    addedAt: work.now,
    addedBy: work.personId,
  })
}

/** A photo waits for nobody to set the clock of a camera: one that runs ahead took it just now. */
function takenAtOf({ takenAt }: NewPhoto, now: Date): Date {
  const said = new Date(takenAt)
  return said > now ? now : said
}

export async function listPhotos(sql: Sql, siteId: string, query: PhotoQuery) {
  const { items, nextCursor } = await listStoredPhotos(sql, siteId, query)
  return { items: items.map(shown), nextCursor }
}

export async function readPhoto(sql: Sql, siteId: string, id: string): Promise<Photo> {
  return shown(await photo(sql, siteId, id))
}

/** The picture or its preview, as it was stored. A withdrawn one is not given out. */
export async function readImage(
  { db, store }: PhotoContext,
  { scope }: Pick<Worker, 'scope'>,
  id: string,
  size: 'full' | 'small',
): Promise<FileReply> {
  const found = await db.readSite(scope, (sql) => photo(sql, scope.siteId, id))
  if (found.withdrawnAt !== null) {
    throw fieldError('not-found', 'id', `This photo was withdrawn by ${found.withdrawnBy}: ${found.withdrawnReason}`)
  }
  const sha256 = size === 'small' ? found.smallSha256 : found.sha256
  const bytes = await store.get(photoKey(scope.siteId, sha256))
  if (bytes === undefined || sha256Of(bytes) !== sha256) throw notWhole()
  const fileName = `${found.tag} ${found.takenAt.slice(0, 10)} ${id.slice(-4)}.jpg`
  return new FileReply({ bytes, mediaType: 'image/jpeg', fileName, tag: sha256, disposition: 'inline' })
}

/** Withdraws a photo. The row stays with who did it and why; asked again with the same reason, it is answered the same. */
export async function withdrawPhoto(context: Context, worker: Worker, id: string, reason: string): Promise<Photo> {
  return await doWork(context, worker, async (work) => {
    const { siteId } = work.tx.scope
    const found = await photo(work.tx.sql, siteId, id)
    if (found.addedById !== work.personId && !(engineering as readonly string[]).includes(work.role)) {
      const sentence = `This photo was added by ${found.addedBy}: only ${found.addedBy}, an engineer or a manager withdraws it.`
      throw new DomainError('role-not-allowed', sentence)
    }
    const withdrew = await markWithdrawn(work.tx, id, work.now, work.personId, reason)
    const now = await photo(work.tx.sql, siteId, id)
    if (!withdrew && now.withdrawnReason !== reason) {
      throw fieldError('already-withdrawn', 'id', `This photo was withdrawn already by ${now.withdrawnBy}.`)
    }
    return shown(now)
  })
}

async function photo(sql: Sql, siteId: string, id: string): Promise<StoredPhoto> {
  const found = await findPhoto(sql, siteId, id)
  if (!found) throw notFound('photo')
  return found
}

function shown({ smallSha256: _small, addedById: _by, ...photo }: StoredPhoto): Photo {
  return photo
}

function sha256Of(bytes: Buffer): string {
  return createHash('sha256').update(bytes).digest('hex')
}
