import { chmodSync, existsSync, globSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TestProject } from 'vitest/node'
import { withClient } from '../../apps/ops/src/database-client.ts'
import { startEmbeddedPostgres, type EmbeddedPostgres } from '../../apps/ops/src/embedded-postgres.ts'
import { lockFolder } from '../../apps/ops/src/folder-lock.ts'
import { OperatorError } from '../../apps/ops/src/operator-error.ts'
import { runningPostmaster } from '../../apps/ops/src/postmaster.ts'
import { prepareDatabase } from '../../apps/ops/src/prepare-database.ts'

declare module 'vitest' {
  export interface ProvidedContext {
    databaseServer: { adminUrl: string; ownerUrl: string; appUrl: string }
  }
}

const folderPrefix = 'shaftbook-test-'
const keptMark = 'kept'

/** Speed before safety: nothing here outlives the run. */
const settings = {
  fsync: 'off',
  synchronous_commit: 'off',
  full_page_writes: 'off',
  autovacuum: 'off',
  max_connections: '200',
  wal_level: 'minimal',
  max_wal_senders: '0',
}

/**
 * One throw-away PostgreSQL for a run, whose database `shaftbook` is migrated and empty: the template of every test
 * file's own. The server ends with the run; databases of files that failed are kept with it unless this is CI.
 */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  clearEarlierRuns()
  const dataFolder = mkdtempSync(join(tmpdir(), folderPrefix))
  chmodSync(dataFolder, 0o711)
  const server = await startEmbeddedPostgres({ dataFolder, settings })
  await prepareDatabase(server.ownerUrl)
  project.provide('databaseServer', { adminUrl: server.adminUrl, ownerUrl: server.ownerUrl, appUrl: server.appUrl })
  return () => tearDown(server, dataFolder)
}

async function tearDown(server: EmbeddedPostgres, dataFolder: string): Promise<void> {
  const kept = await withClient(server.adminUrl, (client) =>
    client.query<{ name: string }>("select datname as name from pg_database where datname like 't\\_%' order by 1"),
  )
  await server.stop()
  if (kept.rows.length === 0 || process.env.CI) {
    rmSync(dataFolder, { recursive: true, force: true })
    return
  }
  writeFileSync(join(dataFolder, keptMark), '')
  const names = kept.rows.map(({ name }) => name).join(', ')
  console.log(`Kept for a look, since tests failed: ${names}\nSHAFTBOOK_DATA_DIR=${dataFolder} npm run database`)
}

/** Ends and removes the servers of runs that were killed; those still running hold the lock of their folder. */
function clearEarlierRuns(): void {
  for (const dataFolder of globSync(join(tmpdir(), `${folderPrefix}*`))) {
    if (existsSync(join(dataFolder, keptMark)) || !isAbandoned(dataFolder)) continue
    const postmaster = runningPostmaster(join(dataFolder, 'postgres', 'data'))
    if (typeof postmaster === 'number') process.kill(postmaster, 'SIGQUIT')
    rmSync(dataFolder, { recursive: true, force: true, maxRetries: 10 })
  }
}

function isAbandoned(dataFolder: string): boolean {
  try {
    lockFolder(dataFolder).release()
    return true
  } catch (error) {
    if (error instanceof OperatorError) return false
    throw error
  }
}
