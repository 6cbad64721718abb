import { addPhoto, type PhotoSubject } from '@shaftbook/contract/photos'
import { ProblemError } from '../../api/problem-error.ts'
import { deviceBook, openDeviceBook } from '../../offline/device-book.ts'
import { queueWrite } from '../../offline/outbox.ts'
import type { TakenPhoto } from './taken-photo.ts'

/** What photos are sent with: the record that they belong to may come after them. */
export interface PhotosOf {
  site: string
  positionId: string
  tag: string
  subjectKind: PhotoSubject
  subjectId: string
  /** The page that they were taken on. */
  address: string
}

/**
 * Puts photos into the outbox, in order: call it before the record that they belong to is put there. Fulfilled once all of
 * them are on the disk; one that is there already is not put there twice. Nothing is awaited of the network.
 */
export async function queuePhotos(of: PhotosOf, photos: readonly TakenPhoto[]): Promise<void> {
  const { site, positionId, tag, subjectKind, subjectId, address } = of
  for (const { id, blob, ...told } of photos) {
    if (await isQueued(id)) continue
    const query = { id, positionId, subjectKind, subjectId, ...told }
    const input = { params: { site }, query, body: blob }
    const { outcome } = await queueWrite({
      id,
      kind: 'photo',
      site,
      positionId,
      subjectText: `Photo of ${tag}`,
      address,
      endpoint: addPhoto,
      input,
    })
    if (await isQueued(id)) {
      // what becomes of it is told in the outbox
      outcome.catch(() => undefined)
      continue
    }
    // this device has no outbox: it was sent there and then
    const end = await outcome
    if (end.state === 'refused') throw new ProblemError(end.problem)
  }
}

async function isQueued(id: string): Promise<boolean> {
  return (await openDeviceBook()) && (await deviceBook.outbox.get({ id })) !== undefined
}
