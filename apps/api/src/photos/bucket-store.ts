import { S3mini } from 's3mini'
import type { BucketConfig } from '../config.ts'
import type { PhotoStore } from './photo-store.ts'
import { notKept, notRead } from './storage-error.ts'

const answerWithinMs = 20_000

/** Photos as objects of a bucket that speaks S3. A single PUT keeps an object whole or not at all. */
export function openBucket(config: BucketConfig): PhotoStore {
  const bucket = new S3mini({
    endpoint: config.endpoint,
    region: config.region,
    accessKeyId: config.accessKeyId,
    secretAccessKey: config.secretAccessKey,
    requestAbortTimeout: answerWithinMs,
  })
  return {
    async put(key, bytes) {
      await bucket.putObject(key, bytes, 'image/jpeg').catch((error: unknown) => {
        throw notKept(error)
      })
    },
    async get(key) {
      const found = await bucket.getObjectArrayBuffer(key).catch((error: unknown) => {
        throw notRead(error)
      })
      return found === null ? undefined : Buffer.from(found)
    },
  }
}
