import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { withClient } from '../../apps/ops/src/database-client.ts'
import { startEmbeddedPostgres } from '../../apps/ops/src/embedded-postgres.ts'
import { isRunning } from '../../apps/ops/src/postmaster.ts'
import { RunningCommand } from '../support/running-command.ts'

let dataFolder = ''
beforeEach(() => {
  const outside = mkdtempSync(join(tmpdir(), 'embedded-'))
  chmodSync(outside, 0o711)
  dataFolder = join(outside, 'the data')
})
afterEach(() => rmSync(join(dataFolder, '..'), { recursive: true }))

const pidFile = () => join(dataFolder, 'postgres', 'data', 'postmaster.pid')

/** Starts, does some work with the owner's address, and stops. */
async function once<T>(work: (ownerUrl: string, steps: string[]) => Promise<T>): Promise<T> {
  const steps: string[] = []
  const postgres = await startEmbeddedPostgres({ dataFolder, onStep: (text) => steps.push(text) })
  return work(postgres.ownerUrl, steps).finally(() => postgres.stop())
}

function ask(url: string, sql: string): Promise<Record<string, unknown>[]> {
  return withClient(url, async (client) => (await client.query<Record<string, unknown>>(sql)).rows)
}

/** The embedded database in a process that can be killed. */
async function runInProcess(): Promise<RunningCommand> {
  const command = new RunningCommand('apps/ops/src/commands/database.ts', [], { SHAFTBOOK_DATA_DIR: dataFolder })
  await command.until('Ctrl-C stops it.')
  return command
}

describe('startEmbeddedPostgres', () => {
  it('keeps data, passwords and port from one start to the next', async () => {
    const first = await once(async (url) => {
      await ask(url, 'create table kept as select 42 as answer')
      return url
    })
    const second = await once(async (url) => {
      expect(await ask(url, 'select answer from kept')).toEqual([{ answer: 42 }])
      return url
    })
    expect(second).toBe(first)
  })

  it('listens on the loopback address only and shows its passwords to its own user only', async () => {
    await once(async (url) => {
      expect(await ask(url, 'show listen_addresses')).toEqual([{ listen_addresses: '127.0.0.1' }])
    })
    expect(statSync(join(dataFolder, 'postgres.json')).mode & 0o777).toBe(0o600)
    expect(statSync(join(dataFolder, 'postgres')).mode & 0o777).toBe(0o700)
  })

  it('gives the serving role no way round row-level security, and lets no role in without its password', async () => {
    const postgres = await startEmbeddedPostgres({ dataFolder })
    try {
      const rights =
        'select rolsuper, rolbypassrls, rolcreaterole, rolcreatedb from pg_roles where rolname = current_user'
      expect(await ask(postgres.appUrl, rights)).toEqual([
        { rolsuper: false, rolbypassrls: false, rolcreaterole: false, rolcreatedb: false },
      ])
      const stranger = new URL(postgres.ownerUrl)
      stranger.password = 'guess'
      await expect(ask(stranger.href, 'select 1')).rejects.toThrow(/does not let shaftbook_owner in/)
    } finally {
      await postgres.stop()
    }
  })

  it('refuses a folder that is in use, with one sentence and a non-zero exit', async () => {
    const first = await runInProcess()
    await expect(startEmbeddedPostgres({ dataFolder })).rejects.toThrow(/is in use by another Shaftbook: stop that one/)
    const second = new RunningCommand('apps/ops/src/commands/database.ts', [], { SHAFTBOOK_DATA_DIR: dataFolder })
    expect(await second.ended).toBe(1)
    expect(second.output.trim().split('\n')).toHaveLength(1)
    expect(await first.stop('SIGTERM')).toBe(0)
    expect(existsSync(pidFile())).toBe(false)
  })

  it('takes over from a start that was killed while its server runs on, and loses nothing committed', async () => {
    const killed = await runInProcess()
    const ownerUrl = /postgresql:\/\/shaftbook_owner\S+/.exec(killed.output)?.[0] ?? ''
    await ask(ownerUrl, 'create table kept as select 42 as answer')
    await killed.stop('SIGKILL')
    const orphan = Number.parseInt(readFileSync(pidFile(), 'utf8'), 10)
    expect(isRunning(orphan)).toBe(true)
    await once(async (url, steps) => {
      expect(steps).toEqual(['stopped a database left running by a start that was killed'])
      expect(await ask(url, 'select answer from kept')).toEqual([{ answer: 42 }])
    })
  })

  it('recovers when start and server were both killed', async () => {
    const killed = await runInProcess()
    await killed.stop('SIGKILL')
    process.kill(Number.parseInt(readFileSync(pidFile(), 'utf8'), 10), 'SIGKILL')
    expect(await once((url) => ask(url, 'select 1 as one'))).toEqual([{ one: 1 }])
  })

  it('is not misled by a pid file whose number another program has now, and leaves that program alone', async () => {
    await once(async () => {})
    writeFileSync(pidFile(), `${process.pid}\n${join(dataFolder, 'postgres', 'data')}\n1\n`)
    expect(await once((url) => ask(url, 'select 1 as one'))).toEqual([{ one: 1 }])
  })

  it('starts afresh after a start that was killed while it made the data', async () => {
    mkdirSync(join(dataFolder, 'postgres', 'data.new', 'base'), { recursive: true })
    expect(await once((url) => ask(url, 'select 1 as one'))).toEqual([{ one: 1 }])
  })

  it('says which file is missing when the passwords are gone', async () => {
    await once(async () => {})
    rmSync(join(dataFolder, 'postgres.json'))
    await expect(startEmbeddedPostgres({ dataFolder })).rejects.toThrow(/postgres\.json is missing.*from a backup/)
  })

  it("shows the server's own last words when it does not start", async () => {
    await once(async () => {})
    rmSync(join(dataFolder, 'postgres', 'data', 'global', 'pg_control'))
    await expect(startEmbeddedPostgres({ dataFolder })).rejects.toThrow(/did not start.*\n[^]*pg_control/)
  })
})
