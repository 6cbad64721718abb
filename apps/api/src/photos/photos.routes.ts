import * as contract from '@shaftbook/contract/photos'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { route } from '../http/route.ts'
import { openPhotoStore } from './photo-store.ts'
import { addPhoto, listPhotos, readImage, readPhoto, withdrawPhoto } from './photos.service.ts'

export function photoRoutes(app: FastifyInstance, context: Context): void {
  const { db, config } = context
  const photos = { ...context, store: openPhotoStore(config.photoStore) }
  route(app, contract.addPhoto, (call) => addPhoto(photos, call, call.query, call.body), {
    maxBodyBytes: config.photoMaxBytes,
  })
  route(app, contract.listPhotos, ({ scope, query }) =>
    db.readSite(scope, (sql) => listPhotos(sql, scope.siteId, query)),
  )
  route(app, contract.readPhoto, ({ scope, params }) =>
    db.readSite(scope, (sql) => readPhoto(sql, scope.siteId, params.id)),
  )
  route(app, contract.readPhotoImage, (call) => readImage(photos, call, call.params.id, call.query.size))
  route(app, contract.withdrawPhoto, (call) => withdrawPhoto(context, call, call.params.id, call.body.reason))
}
