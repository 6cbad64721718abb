import type { Config } from './config.ts'
import type { Database } from './db/database.ts'

/** What every feature is given. */
export interface Context {
  readonly config: Config
  readonly db: Database
  /** The clock; tests set their own. */
  readonly now: () => Date
}
