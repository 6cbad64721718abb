import { z } from 'zod'
import { Id, Instant, Reason, page, pageQuery, recordParams, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { everyone, shaftWork } from './roles.ts'
import { sitePath } from './site-path.ts'

/** What a photo shows: a record of work at the position, or the position itself. */
export const PhotoSubject = z.enum(['mount', 'removal', 'greasing', 'position'])
export type PhotoSubject = z.infer<typeof PhotoSubject>

const told = {
  positionId: Id,
  subjectKind: PhotoSubject,
  subjectId: Id.meta({
    description: 'The id of the record, which may come later; of the position where the subject is the position',
  }),
  step: z.string().trim().max(60).default('').meta({ description: 'The step of the work that it was taken at' }),
  caption: z.string().trim().max(300).default(''),
  takenAt: Instant,
}

export const Photo = z
  .object({
    id: Id,
    ...told,
    tag: z.string(),
    mediaType: z.literal('image/jpeg'),
    sha256: z.string().meta({ description: 'Of the stored picture' }),
    widthPx: z.int(),
    heightPx: z.int(),
    sizeBytes: z.int(),
    addedAt: Instant,
    addedBy: z.string(),
    withdrawnAt: Instant.nullable(),
    withdrawnBy: z.string().nullable(),
    withdrawnReason: z.string().nullable(),
  })
  .meta({ id: 'Photo' })
export type Photo = z.infer<typeof Photo>

/** What is told of a photo beside its bytes. */
export const NewPhoto = z.object({ id: Id, ...told })
export type NewPhoto = z.infer<typeof NewPhoto>

export const addPhoto = endpoint({
  name: 'add-photo',
  method: 'POST',
  path: sitePath('photos'),
  access: shaftWork,
  summary: 'Add a photo: the picture is the body, what is told of it is the query; its metadata is not kept',
  params: siteParams,
  query: NewPhoto,
  takes: ['image/jpeg', 'image/png', 'image/webp'],
  replies: { 201: Photo },
})
export const listPhotos = endpoint({
  name: 'list-photos',
  method: 'GET',
  path: sitePath('photos'),
  access: everyone,
  summary: 'Photos, newest first: of the site, of a position or of a record; withdrawn ones with the reason',
  params: siteParams,
  query: z.object({ ...pageQuery, positionId: Id.optional(), subjectId: Id.optional() }),
  replies: { 200: page(Photo) },
})
export const readPhoto = endpoint({
  name: 'read-photo',
  method: 'GET',
  path: sitePath('photos/:id'),
  access: everyone,
  summary: 'What is known of one photo',
  params: recordParams,
  replies: { 200: Photo },
})
export const readPhotoImage = endpoint({
  name: 'read-photo-image',
  method: 'GET',
  path: sitePath('photos/:id/image'),
  access: everyone,
  summary: 'The picture; `small` is its preview. A withdrawn picture is not shown',
  params: recordParams,
  query: z.object({ size: z.enum(['full', 'small']).default('full') }),
  replies: { 200: null },
  gives: ['image/jpeg'],
})
export const withdrawPhoto = endpoint({
  name: 'withdraw-photo',
  method: 'POST',
  path: sitePath('photos/:id/withdrawal'),
  access: shaftWork,
  summary: 'Withdraw a photo: by the one who added it, or by an engineer or manager',
  params: recordParams,
  body: z.object({ reason: Reason }),
  replies: { 200: Photo },
})
