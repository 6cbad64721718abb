import { createHash } from 'node:crypto'
import { afterAll, beforeAll, inject } from 'vitest'
import { withClient } from '../../apps/ops/src/database-client.ts'

/** A migrated database without any site, for one test file. */
export type TestDatabase = { name: string; ownerUrl: string; appUrl: string }

/**
 * Gives the test file that calls it a database of its own, before all its tests. It is dropped when they have passed
 * and kept when one failed.
 * @returns filled in when the tests run; reading it earlier is an error of the test
 */
export function useTestDatabase(): TestDatabase {
  let database: TestDatabase | undefined
  // the runner reads the fixtures it must make from the first parameter, which has to be a pattern
  /* oxlint-disable no-empty-pattern */
  beforeAll(async ({}, suite) => {
    database = await createTestDatabase(suite.file.name)
  })
  afterAll(async ({}, suite) => {
    if (database !== undefined && !hasFailure(suite)) await dropTestDatabase(database)
  })
  /* oxlint-enable no-empty-pattern */
  const current = () => {
    if (database === undefined) throw new Error('The test database exists only once the tests run.')
    return database
  }
  return {
    get name() {
      return current().name
    },
    get ownerUrl() {
      return current().ownerUrl
    },
    get appUrl() {
      return current().appUrl
    },
  }
}

/** @param fileName names the database, with a digest: t_<file>_<digest> */
export async function createTestDatabase(fileName: string): Promise<TestDatabase> {
  const { adminUrl, ownerUrl, appUrl } = inject('databaseServer')
  const digest = createHash('sha256').update(fileName).digest('hex').slice(0, 8)
  const name = `t_${fileName
    .replace(/^.*[\\/]|\.test\.tsx?$/g, '')
    .replace(/\W+/g, '_')
    .slice(0, 40)}_${digest}`
  await withClient(adminUrl, async (client) => {
    await client.query(`drop database if exists ${name} with (force)`)
    await client.query(`create database ${name} template shaftbook owner shaftbook_owner`)
  })
  return { name, ownerUrl: withDatabase(ownerUrl, name), appUrl: withDatabase(appUrl, name) }
}

/** Drops it, ending connections that a test left open. */
export async function dropTestDatabase(database: TestDatabase): Promise<void> {
  const { adminUrl } = inject('databaseServer')
  await withClient(adminUrl, (client) => client.query(`drop database ${database.name} with (force)`))
}

function withDatabase(url: string, name: string): string {
  const changed = new URL(url)
  changed.pathname = `/${name}`
  return changed.href
}

type Task = { result?: { state?: string }; tasks?: readonly Task[] }

function hasFailure(task: Task): boolean {
  return task.result?.state === 'fail' || (task.tasks ?? []).some(hasFailure)
}
