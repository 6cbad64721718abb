import type { PhotoStoreConfig } from '../config.ts'
import { openBucket } from './bucket-store.ts'
import { openFolder } from './folder-store.ts'

/** Where the bytes of photos lie. A key holds always the same bytes: it ends in their hash. */
export interface PhotoStore {
  /** Keeps bytes: all of them, or none. @throws DomainError storage-not-ready */
  put(key: string, bytes: Buffer): Promise<void>
  /** The bytes, or undefined where there are none of this key. @throws DomainError storage-not-ready */
  get(key: string): Promise<Buffer | undefined>
}

export function openPhotoStore(config: PhotoStoreConfig): PhotoStore {
  return config.kind === 'folder' ? openFolder(config.folder) : openBucket(config)
}

/** Every site has bytes of its own, also where two sites hold the same picture. */
export function photoKey(siteId: string, sha256: string): string {
  return `${siteId}/${sha256.slice(0, 2)}/${sha256.slice(2)}`
}
