import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { OperatorError } from './operator-error.ts'

/** One folder of prisma/migrations. Line ends are those of Unix, whatever the checkout made of them. */
export type MigrationFile = { name: string; sql: string; checksum: string }

/** An applied migration in Prisma's table. */
export type RecordedMigration = { name: string; checksum: string }

/** The migrations of a folder, in the order they are applied: by name, which starts with a stamp. */
export function readMigrations(folder: string): MigrationFile[] {
  const names = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(join(folder, entry.name, 'migration.sql')))
    .map((entry) => entry.name)
    .sort()
  return names.map((name) => {
    const sql = readFileSync(join(folder, name, 'migration.sql'), 'utf8').replaceAll('\r\n', '\n')
    return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') }
  })
}

/**
 * The migrations that a database still needs.
 * @throws OperatorError when the database has one that these files do not have, or has one in another wording
 */
export function outstanding(files: MigrationFile[], applied: RecordedMigration[]): MigrationFile[] {
  for (const { name, checksum } of applied) {
    const file = files.find((file) => file.name === name)
    if (file === undefined) {
      throw new OperatorError(
        `The database has the migration ${name}, which this Shaftbook does not know: it belongs to a newer version. Start that version, or use another database.`,
      )
    }
    if (file.checksum !== checksum) {
      throw new OperatorError(
        `The migration ${name} was changed after this database got it: restore the file as it was, or start with an empty database.`,
      )
    }
  }
  return files.filter((file) => !applied.some((row) => row.name === file.name))
}
