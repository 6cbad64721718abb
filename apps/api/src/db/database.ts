import { PrismaPg } from '@prisma/adapter-pg'
import { Pool, type PoolClient } from 'pg'
import { PrismaClient, type Prisma } from '../../../../prisma/client/client.ts'
import { asDomainError, databaseGone } from './db-errors.ts'

/** Whose data a request may touch, and in whose name it writes. */
export interface Scope {
  readonly siteId: string
  readonly personId: string | null
}

/** Runs one statement in the open transaction. Days are read as `::text`; values are passed as parameters, always. */
export type Sql = <Row extends object>(text: string, values?: readonly unknown[]) => Promise<Row[]>

/** An open transaction of one site: Prisma for single records, SQL for what goes through many rows at once. */
export interface SiteTx {
  readonly scope: Scope
  readonly prisma: Prisma.TransactionClient
  readonly sql: Sql
}

export interface Database {
  /** The one way to change a site's data: one transaction that sees that site only, all or nothing. */
  withSite<T>(scope: Scope, work: (tx: SiteTx) => Promise<T>): Promise<T>
  /** The one way to read lists of a site: plain SQL in a read-only transaction that sees that site only. */
  readSite<T>(scope: Scope, work: (sql: Sql) => Promise<T>): Promise<T>
  /** Calls the functions that stand outside any site: sign-in, sessions, the list of sites for jobs. */
  ask: Sql
  pool(): { total: number; idle: number; waiting: number }
  close(): Promise<void>
}

const uuid = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i

/** The setting that row-level security reads, as a literal: SET takes no parameters, so the value is checked here. */
function setLocal(name: 'app.site' | 'app.person', id: string): string {
  if (!uuid.test(id)) throw new TypeError(`${name} takes a UUID`)
  return `set local ${name} = '${id}'`
}

function settings(scope: Scope): string[] {
  const site = setLocal('app.site', scope.siteId)
  return scope.personId === null ? [site] : [site, setLocal('app.person', scope.personId)]
}

/** Lends a connection of the pool. One that breaks meanwhile is not given back, and does not end the process. */
async function withClient<T>(pool: Pool, work: (client: PoolClient) => Promise<T>): Promise<T> {
  const client = await pool.connect().catch((error: unknown) => {
    throw databaseGone(error)
  })
  let broken: Error | undefined
  const onError = (error: Error): void => {
    broken = error
  }
  client.on('error', onError)
  try {
    return await work(client)
  } catch (error) {
    await client.query('rollback').catch(onError)
    throw asDomainError(error)
  } finally {
    client.off('error', onError)
    client.release(broken)
  }
}

/** Opens the pool of the serving role. One pool serves Prisma and plain SQL. */
export function openDatabase(options: { appUrl: string; poolSize: number; onError: (error: Error) => void }): Database {
  const pool = new Pool({
    connectionString: options.appUrl,
    max: options.poolSize,
    connectionTimeoutMillis: 10_000,
    keepAlive: true,
    statement_timeout: 15_000,
    idle_in_transaction_session_timeout: 30_000,
  })
  pool.on('error', options.onError)
  const prisma = new PrismaClient({ adapter: new PrismaPg(pool, { disposeExternalPool: false }) })

  return {
    async withSite(scope, work) {
      try {
        return await prisma.$transaction(
          async (tx) => {
            for (const setting of settings(scope)) await tx.$executeRawUnsafe(setting)
            return await work({ scope, prisma: tx, sql: (text, values = []) => tx.$queryRawUnsafe(text, ...values) })
          },
          { timeout: 30_000, maxWait: 10_000 },
        )
      } catch (error) {
        throw asDomainError(error)
      }
    },

    async readSite(scope, work) {
      return await withClient(pool, async (client) => {
        await client.query(`begin read only; ${settings(scope).join('; ')}`)
        const result = await work(async (text, values = []) => (await client.query(text, [...values])).rows)
        await client.query('commit')
        return result
      })
    },

    async ask(text, values = []) {
      return await withClient(pool, async (client) => (await client.query(text, [...values])).rows)
    },
    pool: () => ({ total: pool.totalCount, idle: pool.idleCount, waiting: pool.waitingCount }),
    async close() {
      await prisma.$disconnect()
      await pool.end()
    },
  }
}
