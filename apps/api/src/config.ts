import { z } from 'zod'

/** What the service needs to run. `webDir` holds the built dashboard; without it only the API is served. */
export const Config = z.object({
  appUrl: z.string().min(1).describe('PostgreSQL URL of the role that serves (shaftbook_app)'),
  host: z.string().default('127.0.0.1'),
  port: z.number().int().min(0).max(65_535).default(4380),
  webDir: z.string().optional(),
  poolSize: z.number().int().min(1).max(200).default(20),
  signInTriesPerMinute: z.number().int().min(1).default(10),
  secureCookies: z.boolean().default(false).describe('true where the service is reached by https'),
  trustProxy: z.boolean().default(false),
  log: z.enum(['silent', 'error', 'warn', 'info', 'debug']).default('warn'),
  jobs: z.boolean().default(true).describe('false: another process runs the nightly jobs'),
})
export type Config = z.infer<typeof Config>
