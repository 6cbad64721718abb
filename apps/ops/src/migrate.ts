import { randomUUID } from 'node:crypto'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { DatabaseError, type Client } from 'pg'
import { withClient } from './database-client.ts'
import { outstanding, readMigrations, type MigrationFile, type RecordedMigration } from './migration-files.ts'
import { OperatorError } from './operator-error.ts'

const migrationsFolder = join(fileURLToPath(import.meta.url), '../../../../prisma/migrations')

/** Any number, but ours: whoever migrates a database holds this advisory lock in it. */
const migrationLock = 4_380_018

/**
 * Applies the outstanding migrations in order, each in one transaction together with its row in Prisma's own table
 * `_prisma_migrations`, so that one is there whole and recorded or not at all, however the process ends. Two at once
 * are safe: the second waits for the first and finds nothing left to do. Prisma's schema engine is not used: its
 * PostgreSQL adapter cuts scripts at every semicolon, inside function bodies and comments too.
 * @param onStep hears of each migration before it runs, and of waiting
 * @returns the names of the migrations applied now
 * @throws OperatorError with the migration's name, the line and the database's own sentence when one fails
 */
export function migrate(
  ownerUrl: string,
  onStep: (text: string) => void = () => {},
  folder = migrationsFolder,
): Promise<string[]> {
  return withClient(ownerUrl, async (client) => {
    await takeLock(client, onStep)
    const files = readMigrations(folder)
    const todo = outstanding(files, await recordedMigrations(client))
    for (const file of todo) {
      onStep(file.name)
      await applyMigration(client, file)
    }
    const left = outstanding(files, await recordedMigrations(client))
    if (left.length > 0) throw new Error(`not recorded as applied: ${left.map((file) => file.name).join(', ')}`)
    return todo.map((file) => file.name)
  })
}

async function takeLock(client: Client, onStep: (text: string) => void): Promise<void> {
  const { rows } = await client.query<{ taken: boolean }>('select pg_try_advisory_lock($1) as taken', [migrationLock])
  if (rows[0]?.taken) return
  onStep('waiting for another process that is migrating this database')
  await client.query('select pg_advisory_lock($1)', [migrationLock])
}

async function recordedMigrations(client: Client): Promise<RecordedMigration[]> {
  const table = await client.query<{ exists: boolean }>(
    "select to_regclass('_prisma_migrations') is not null as exists",
  )
  if (!table.rows[0]?.exists) return []
  const { rows } = await client.query<RecordedMigration>(
    `select migration_name as name, checksum from _prisma_migrations
     where finished_at is not null and rolled_back_at is null`,
  )
  return rows
}

async function applyMigration(client: Client, file: MigrationFile): Promise<void> {
  await client.query(`create table if not exists _prisma_migrations (
    id varchar(36) primary key,
    checksum varchar(64) not null,
    finished_at timestamptz,
    migration_name varchar(255) not null,
    logs text,
    rolled_back_at timestamptz,
    started_at timestamptz not null default now(),
    applied_steps_count integer not null default 0
  )`)
  try {
    await client.query('begin')
    await client.query(file.sql)
    await client.query(
      `insert into _prisma_migrations (id, checksum, finished_at, migration_name, applied_steps_count)
       values ($1, $2, clock_timestamp(), $3, 1)`,
      [randomUUID(), file.checksum, file.name],
    )
    await client.query('commit')
  } catch (error) {
    throw new OperatorError(failureSentence(file, error), { cause: error })
  }
}

function failureSentence(file: MigrationFile, error: unknown): string {
  const line =
    error instanceof DatabaseError && error.position
      ? ` in line ${file.sql.slice(0, Number(error.position)).split('\n').length}`
      : ''
  const detail = error instanceof DatabaseError && error.detail ? ` (${error.detail})` : ''
  return `The migration ${file.name} failed${line}, and nothing of it stays. The database says: ${(error as Error).message}${detail}`
}
