import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { spawnSync } from 'node:child_process'

/**
 * The process id in a cluster's postmaster.pid if that process is a PostgreSQL, 'stale' if it is something else or
 * nothing (the number may have been given to another program since), undefined where there is no such file.
 */
export function runningPostmaster(dataFolder: string): number | 'stale' | undefined {
  const file = join(dataFolder, 'postmaster.pid')
  if (!existsSync(file)) return undefined
  const pid = Number.parseInt(readFileSync(file, 'utf8'), 10)
  return isRunning(pid) && /postgres/.test(commandLine(pid)) ? pid : 'stale'
}

/** Whether a process with this id exists, whoever owns it. */
export function isRunning(pid: number): boolean {
  if (!(pid > 0)) return false
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM'
  }
}

function commandLine(pid: number): string {
  if (process.platform === 'linux') {
    const file = `/proc/${pid}/cmdline`
    return existsSync(file) ? readFileSync(file, 'utf8') : ''
  }
  if (process.platform === 'win32') {
    return spawnSync('tasklist', ['/FI', `PID eq ${pid}`, '/FO', 'CSV'], { encoding: 'utf8' }).stdout ?? ''
  }
  return spawnSync('ps', ['-p', String(pid), '-o', 'command='], { encoding: 'utf8' }).stdout ?? ''
}
