import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import {
  chownSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'
import { runAs, type PostgresAccount } from './postgres-account.ts'
import type { PostgresPrograms } from './postgres-programs.ts'

/** Where an unprivileged account keeps what it can't reach in root's folders. */
const sharedFolder = '/var/lib/shaftbook'

/**
 * The folder that holds the cluster and its log, made and owned by the account. It is `postgres` in the data folder;
 * where the account can't reach that (a clone below /root), it is a folder of its own below /var/lib/shaftbook. The
 * data folder then names it in `postgres-folder`, and a cluster made earlier moves there.
 */
export async function postgresHome(dataFolder: string, account: PostgresAccount): Promise<string> {
  const pointer = join(dataFolder, 'postgres-folder')
  const current = existsSync(pointer) ? readFileSync(pointer, 'utf8').trim() : join(dataFolder, 'postgres')
  let home = current
  if (account.kind === 'account' && !(await canReach(account, dirname(current)))) {
    home = join(sharedFolder, createHash('sha256').update(realpathSync(dataFolder)).digest('hex').slice(0, 12))
    mkdirSync(sharedFolder, { recursive: true, mode: 0o755 })
    if (existsSync(current)) move(current, home)
    writeFileSync(pointer, `${home}\n`)
  }
  mkdirSync(home, { recursive: true, mode: 0o700 })
  giveTo(account, home)
  return home
}

/** The folder of PostgreSQL's programs that the account can run: the installed one, or a copy below /var/lib/shaftbook. */
export async function reachablePrograms(installed: PostgresPrograms, account: PostgresAccount): Promise<string> {
  if (account.kind !== 'account' || (await canReach(account, installed.folder))) return installed.folder
  const copy = join(sharedFolder, `postgresql-${installed.version}`)
  if (!existsSync(copy)) {
    const unfinished = `${copy}.${process.pid}`
    mkdirSync(sharedFolder, { recursive: true, mode: 0o755 })
    copyTree(dirname(installed.folder), unfinished)
    execFileSync('chmod', ['-R', 'a+rX', unfinished])
    renameSync(unfinished, copy)
  }
  return join(copy, 'bin')
}

async function canReach(account: PostgresAccount, folder: string): Promise<boolean> {
  return (await runAs(account, '/bin/sh', ['-c', 'cd "$1"', 'sh', folder])).code === 0
}

function move(from: string, to: string): void {
  copyTree(from, to)
  rmSync(from, { recursive: true })
}

/** Copies a tree with its modes and links (PostgreSQL refuses data that others may look into), replacing a half-made copy. */
function copyTree(from: string, to: string): void {
  rmSync(to, { recursive: true, force: true })
  execFileSync('cp', ['-a', from, to])
}

/** As root, hands a tree to the account: a cluster may have been made on a machine that allowed another one. */
export function giveTo(account: PostgresAccount, path: string): void {
  if (account.kind === 'self') return
  const [uid, gid] = account.kind === 'account' ? [account.uid, account.gid] : [0, 0]
  const found = lstatSync(path)
  if (found.uid !== uid) chownSync(path, uid, gid)
  if (found.isDirectory()) for (const name of readdirSync(path)) giveTo(account, join(path, name))
}
