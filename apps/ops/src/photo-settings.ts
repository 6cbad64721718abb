import { join } from 'node:path'
import type { PhotoStoreConfig } from '../../api/src/config.ts'
import type { Environment } from './environment.ts'
import { OperatorError } from './operator-error.ts'

/** Where photos lie and how large one may be. @throws OperatorError for a bucket without its key */
export function photoSettings(environment: Environment): { photoStore: PhotoStoreConfig; photoMaxBytes: number } {
  const photoMaxBytes = Math.round(environment.SHAFTBOOK_PHOTO_MB * 1_000_000)
  return { photoStore: photoStore(environment), photoMaxBytes }
}

function photoStore(environment: Environment): PhotoStoreConfig {
  const { SHAFTBOOK_PHOTOS: endpoint, SHAFTBOOK_PHOTOS_KEY: accessKeyId } = environment
  const { SHAFTBOOK_PHOTOS_SECRET: secretAccessKey, SHAFTBOOK_PHOTOS_REGION: region = 'auto' } = environment
  if (endpoint === undefined) return { kind: 'folder', folder: join(environment.SHAFTBOOK_DATA_DIR, 'photos') }
  if (accessKeyId === undefined || secretAccessKey === undefined) {
    throw new OperatorError(
      'SHAFTBOOK_PHOTOS names a bucket: set SHAFTBOOK_PHOTOS_KEY and SHAFTBOOK_PHOTOS_SECRET too.',
    )
  }
  return { kind: 'bucket', endpoint, region, accessKeyId, secretAccessKey }
}
