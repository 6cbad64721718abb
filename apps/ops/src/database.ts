import { withClient } from './database-client.ts'
import { startEmbeddedPostgres } from './embedded-postgres.ts'
import type { Environment } from './environment.ts'
import { OperatorError } from './operator-error.ts'

export type Database = {
  /** migrates and loads */
  ownerUrl: string
  /** serves: bound by row-level security */
  appUrl: string
  description: string
  /** resolves with the server's last words if it ends without having been told to; never for a server of one's own */
  ended: Promise<string>
  stop(): Promise<void>
}

const oldestServer = 15

/** The database that the environment asks for: the server at DATABASE_URL, else the embedded one in the data folder. */
export async function openDatabase(environment: Environment, say: (text: string) => void): Promise<Database> {
  const { DATABASE_URL: ownerUrl, DATABASE_APP_URL: appUrl, SHAFTBOOK_DATA_DIR: dataFolder } = environment
  if (ownerUrl !== undefined) return externalDatabase(ownerUrl, appUrl)
  const postgres = await startEmbeddedPostgres({ dataFolder, onStep: say })
  return { ...postgres, description: `PostgreSQL 18 in ${dataFolder}, port ${postgres.port}` }
}

async function externalDatabase(ownerUrl: string, appUrl: string | undefined): Promise<Database> {
  const version = await withClient(ownerUrl, async (client) => {
    const { rows } = await client.query<{ version: number }>(
      "select current_setting('server_version_num')::int as version",
    )
    return Math.floor((rows[0]?.version ?? 0) / 10_000)
  })
  if (version < oldestServer) {
    throw new OperatorError(
      `The server at DATABASE_URL is PostgreSQL ${version}, and Shaftbook needs ${oldestServer} or newer: use a newer server.`,
    )
  }
  return {
    ownerUrl,
    appUrl: appUrl ?? asApp(ownerUrl),
    description: `PostgreSQL ${version} at ${new URL(ownerUrl).host}`,
    ended: new Promise(() => {}),
    stop: async () => {},
  }
}

/** The owner's address with every session in the role shaftbook_app, which the migrations grant to the owner. */
export function asApp(ownerUrl: string): string {
  const url = new URL(ownerUrl)
  const options = [url.searchParams.get('options'), '-c role=shaftbook_app'].filter((part) => part !== null).join(' ')
  url.searchParams.delete('options')
  // libpq, unlike browsers, does not read "+" as a space
  const rest = url.search === '' ? '?' : `${url.search}&`
  url.search = ''
  return `${url.href}${rest}options=${encodeURIComponent(options)}`
}
