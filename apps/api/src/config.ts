import { z } from 'zod'

/** A bucket of a storage that speaks S3. */
const Bucket = z.object({
  kind: z.literal('bucket'),
  endpoint: z.url().describe('the address of the bucket, e.g. https://storage.example/photos'),
  region: z.string().min(1).default('auto'),
  accessKeyId: z.string().min(1),
  secretAccessKey: z.string().min(1),
})
export type BucketConfig = z.infer<typeof Bucket>
const PhotoStore = z.discriminatedUnion('kind', [z.object({ kind: z.literal('folder'), folder: z.string() }), Bucket])
export type PhotoStoreConfig = z.infer<typeof PhotoStore>

/** The server that takes our mails, and whom they come from. */
const Mail = z.object({ smtp: z.url({ protocol: /^smtps?$/ }), from: z.string().min(3) })
export type MailConfig = z.infer<typeof Mail>

/** What the service needs to run. `webDir` holds the built dashboard; without it only the API is served. */
export const Config = z.object({
  appUrl: z.string().min(1).describe('PostgreSQL URL of the role that serves (shaftbook_app)'),
  address: z
    .url({ protocol: /^https?$/ })
    .transform((url) => url.replace(/\/+$/, ''))
    .optional()
    .describe('where people reach the book, for QR codes; else the address of the request'),
  host: z.string().default('127.0.0.1'),
  port: z.number().int().min(0).max(65_535).default(4380),
  webDir: z.string().optional(),
  poolSize: z.number().int().min(1).max(200).default(20),
  signInTriesPerMinute: z.number().int().min(1).default(10),
  secureCookies: z.boolean().default(false).describe('true where the service is reached by https'),
  trustProxy: z.boolean().default(false),
  log: z.enum(['silent', 'error', 'warn', 'info', 'debug']).default('warn'),
  photoStore: PhotoStore.default({ kind: 'folder', folder: '.data/photos' }),
  photoMaxBytes: z.number().int().min(100_000).max(100_000_000).default(12_000_000),
  photoMaxPixels: z.number().int().min(1_000_000).max(200_000_000).default(64_000_000),
  mail: Mail.optional().describe('without it no mail is sent'),
  jobs: z.boolean().default(true).describe('false: another process runs the nightly jobs'),
})
export type Config = z.infer<typeof Config>
