import { randomBytes } from 'node:crypto'
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { OperatorError } from './operator-error.ts'

/** What a data folder remembers of its PostgreSQL: the port it last had and the passwords of its three roles. */
export type PostgresSettings = { port: number; admin: string; owner: string; app: string }

const fileName = 'postgres.json'

/**
 * The settings of a data folder; new passwords for an empty one.
 * @param hasCluster whether the folder's cluster exists, so that its passwords must too
 * @throws OperatorError when they are gone
 */
export function readSettings(dataFolder: string, hasCluster: boolean): PostgresSettings {
  const file = join(dataFolder, fileName)
  if (existsSync(file)) return JSON.parse(readFileSync(file, 'utf8')) as PostgresSettings
  if (hasCluster) {
    throw new OperatorError(
      `${file} is missing, and with it the passwords of the database beside it: put the file back from a backup, or move ${dataFolder} away to start with an empty book.`,
    )
  }
  const password = () => randomBytes(24).toString('base64url')
  return { port: 0, admin: password(), owner: password(), app: password() }
}

/** Writes the settings so that only this user can read them and a crash leaves the old or the new, never half. */
export function writeSettings(dataFolder: string, settings: PostgresSettings): void {
  const file = join(dataFolder, fileName)
  writeFileSync(`${file}.new`, `${JSON.stringify(settings, null, 2)}\n`, { mode: 0o600 })
  renameSync(`${file}.new`, file)
}
