import { spawn, spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { OperatorError } from './operator-error.ts'

/**
 * Whom PostgreSQL's programs run as. PostgreSQL refuses to run as root, so root starts them in a user namespace where
 * it has the number 1000 (nothing needs to be copied or to change hands there), or, where namespaces are barred, as an
 * unprivileged account, which can reach only what root's folders let it.
 */
export type PostgresAccount =
  { kind: 'self' } | { kind: 'namespace' } | { kind: 'account'; name: string; uid: number; gid: number }

const namespace = ['unshare', '--user', '--map-user=1000', '--map-group=1000']

/** Chooses the account for this process, trying out what this machine allows. */
export function choosePostgresAccount(): PostgresAccount {
  if (process.getuid?.() !== 0) return { kind: 'self' }
  const [command = '', ...args] = namespace
  if (process.platform === 'linux' && spawnSync(command, [...args, 'true']).status === 0) return { kind: 'namespace' }
  return unprivilegedAccount(readFileSync('/etc/passwd', 'utf8'))
}

/** The account `nobody` of a passwd file. @throws OperatorError when there is none */
export function unprivilegedAccount(passwd: string): PostgresAccount {
  const fields = passwd
    .split('\n')
    .map((line) => line.split(':'))
    .find(([name]) => name === 'nobody')
  if (fields === undefined) {
    throw new OperatorError(
      'PostgreSQL does not run as root and this machine has no account "nobody" to run it as: start Shaftbook as an ordinary user, or set DATABASE_URL.',
    )
  }
  // some systems write the number of nobody as -2
  return { kind: 'account', name: 'nobody', uid: Number(fields[2]) >>> 0, gid: Number(fields[3]) >>> 0 }
}

export type ProgramResult = { code: number; output: string }

/** Runs one of PostgreSQL's programs as the account and returns its exit code and all that it printed. */
export function runAs(account: PostgresAccount, program: string, args: string[]): Promise<ProgramResult> {
  const [command = '', ...rest] = account.kind === 'namespace' ? [...namespace, program, ...args] : [program, ...args]
  const identity = account.kind === 'account' ? { uid: account.uid, gid: account.gid } : {}
  return new Promise((resolve) => {
    const child = spawn(command, rest, {
      ...identity,
      cwd: '/',
      env: cleanEnvironment(),
      stdio: ['ignore', 'pipe', 'pipe'],
      windowsHide: true,
    })
    let output = ''
    child.stdout.on('data', (chunk: Buffer) => (output += chunk.toString()))
    child.stderr.on('data', (chunk: Buffer) => (output += chunk.toString()))
    child.on('error', (error) => resolve({ code: 1, output: `${program}: ${error.message}` }))
    child.on('close', (code) => resolve({ code: code ?? 1, output }))
  })
}

/** The environment without variables that steer PostgreSQL's programs elsewhere, and with messages in English. */
function cleanEnvironment(): NodeJS.ProcessEnv {
  const kept = Object.entries(process.env).filter(([name]) => !name.startsWith('PG') && !name.startsWith('LC_'))
  return { ...Object.fromEntries(kept), LC_ALL: 'C' }
}
