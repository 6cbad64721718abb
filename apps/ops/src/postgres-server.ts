import { appendFileSync, existsSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { OperatorError } from './operator-error.ts'
import { runAs, type PostgresAccount, type ProgramResult } from './postgres-account.ts'
import { giveTo } from './postgres-home.ts'
import { isRunning, runningPostmaster } from './postmaster.ts'

/** One cluster: the account and the folder of the programs that serve it, its data and its log. */
export type Cluster = { account: PostgresAccount; programs: string; data: string; logFile: string }

const secondsToStart = 120
const secondsToStop = 60
const logBytesKept = 5_000_000

/** Makes a cluster with the superuser shaftbook_admin, beside its place and then moved there whole: a killed start leaves no half of one. */
export async function makeCluster(cluster: Cluster, adminPassword: string): Promise<void> {
  const unfinished = `${cluster.data}.new`
  const passwordFile = join(dirname(cluster.data), 'password')
  rmSync(unfinished, { recursive: true, force: true })
  writeFileSync(passwordFile, adminPassword, { mode: 0o600 })
  giveTo(cluster.account, passwordFile)
  const result = await runAs(cluster.account, join(cluster.programs, 'initdb'), [
    `--pgdata=${unfinished}`,
    '--username=shaftbook_admin',
    `--pwfile=${passwordFile}`,
    '--auth=scram-sha-256',
    '--encoding=UTF8',
    '--locale=C',
    '--locale-provider=builtin',
    '--builtin-locale=C.UTF-8',
  ]).finally(() => rmSync(passwordFile))
  if (result.code !== 0) throw failure('PostgreSQL could not make its data folder', cluster, result)
  appendFileSync(join(unfinished, 'postgresql.conf'), "\ninclude = 'shaftbook.conf'\n")
  renameSync(unfinished, cluster.data)
}

/**
 * Starts the server and waits until it accepts connections.
 * @param settings lines of postgresql.conf, as name and value
 * @throws OperatorError with the last lines of its log when it does not
 */
export async function startServer(cluster: Cluster, settings: Record<string, string>): Promise<void> {
  const lines = Object.entries(settings).map(([name, value]) => `${name} = '${value}'\n`)
  writeFileSync(join(cluster.data, 'shaftbook.conf'), `# written at every start\n${lines.join('')}`)
  giveTo(cluster.account, join(cluster.data, 'shaftbook.conf'))
  if (existsSync(cluster.logFile) && statSync(cluster.logFile).size > logBytesKept) {
    renameSync(cluster.logFile, `${cluster.logFile}.1`)
  }
  const logBegan = logSize(cluster)
  const start = ['start', '--wait', `--timeout=${secondsToStart}`, `--log=${cluster.logFile}`]
  for (let attempt = 1; ; attempt += 1) {
    const result = await control(cluster, start)
    if (result.code === 0) return
    // the processes of a killed server need a moment to notice
    const isTransient = /shared memory block .* is still in use/.test(logTail(cluster, logBegan))
    if (!isTransient || attempt === 5) throw failure('PostgreSQL did not start', cluster, result, logBegan)
    await pause(1000)
  }
}

/** Stops the server in order; by force where it does not stop in time. */
export async function stopServer(cluster: Cluster): Promise<void> {
  const stop = ['stop', '--wait', `--timeout=${secondsToStop}`]
  const result = await control(cluster, [...stop, '--mode=fast'])
  if (result.code === 0 || typeof runningPostmaster(cluster.data) !== 'number') return
  const forced = await control(cluster, [...stop, '--mode=immediate'])
  if (forced.code !== 0) throw failure('PostgreSQL did not stop', cluster, forced)
}

/**
 * Clears away what a killed start left: a server still running, or its pid file. Only for the holder of the folder's
 * lock, since then no other start can own that server.
 * @returns whether a running server was stopped
 */
export async function stopLeftover(cluster: Cluster): Promise<boolean> {
  const found = runningPostmaster(cluster.data)
  if (found === 'stale') rmSync(join(cluster.data, 'postmaster.pid'))
  if (typeof found !== 'number') return false
  await stopServer(cluster)
  return true
}

/** Resolves with the last lines of the log when the server's process is gone, unless `cancel` is called first. */
export function watchServer(cluster: Cluster): { ended: Promise<string>; cancel: () => void } {
  const pid = runningPostmaster(cluster.data)
  const { promise: ended, resolve } = Promise.withResolvers<string>()
  const timer = setInterval(() => {
    if (typeof pid === 'number' && isRunning(pid)) return
    clearInterval(timer)
    resolve(logTail(cluster))
  }, 1000)
  return { ended, cancel: () => clearInterval(timer) }
}

function control(cluster: Cluster, args: string[]): Promise<ProgramResult> {
  return runAs(cluster.account, join(cluster.programs, 'pg_ctl'), [...args, `--pgdata=${cluster.data}`])
}

function logSize(cluster: Cluster): number {
  return existsSync(cluster.logFile) ? statSync(cluster.logFile).size : 0
}

/** The last lines of the log, none of them older than its byte `from`. */
function logTail(cluster: Cluster, from = 0): string {
  if (!existsSync(cluster.logFile)) return ''
  return readFileSync(cluster.logFile).subarray(from).toString().trimEnd().split('\n').slice(-12).join('\n')
}

function failure(what: string, cluster: Cluster, result: ProgramResult, logFrom = 0): OperatorError {
  const said = [result.output.trim(), logTail(cluster, logFrom)].filter((text) => text !== '').join('\n')
  if (/no space left/i.test(said)) {
    return new OperatorError(`The disk that holds ${cluster.data} is full: free some space and start again.`)
  }
  return new OperatorError(`${what}. Its last words (the whole log is ${cluster.logFile}):\n${said}`)
}
