import { chmodSync, existsSync, mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { delimiter, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { withClient } from '../../apps/ops/src/database-client.ts'
import { startEmbeddedPostgres } from '../../apps/ops/src/embedded-postgres.ts'

const isRoot = process.getuid?.() === 0

let outside = ''
beforeEach(() => {
  outside = mkdtempSync(join(tmpdir(), 'account-'))
})
afterEach(() => {
  vi.unstubAllEnvs()
  rmSync(outside, { recursive: true })
})

/** Starts in the folder, counts up a number kept in the database, and stops. */
async function count(dataFolder: string): Promise<{ counted: number; steps: string[] }> {
  const steps: string[] = []
  const postgres = await startEmbeddedPostgres({ dataFolder, onStep: (text) => steps.push(text) })
  try {
    const counted = await withClient(postgres.ownerUrl, async (client) => {
      await client.query('create sequence if not exists starts')
      const { rows } = await client.query<{ counted: number }>("select nextval('starts')::int as counted")
      return rows[0]?.counted ?? 0
    })
    return { counted, steps }
  } finally {
    await postgres.stop()
  }
}

/** A machine that bars user namespaces: there, unshare fails. */
function barNamespaces(): void {
  const folder = join(outside, 'bin')
  mkdirSync(folder)
  writeFileSync(join(folder, 'unshare'), '#!/bin/sh\nexit 1\n', { mode: 0o755 })
  vi.stubEnv('PATH', `${folder}${delimiter}${process.env.PATH}`)
}

describe('a user', () => {
  it('starts the embedded PostgreSQL in a folder that is his alone', async () => {
    expect(statSync(outside).mode & 0o777).toBe(0o700)
    expect((await count(join(outside, 'data'))).counted).toBe(1)
  })
})

// An ordinary user has one way to run PostgreSQL, root has these two.
/* oxlint-disable vitest/no-conditional-tests */
if (isRoot) {
  describe('root, where user namespaces are barred', () => {
    it('starts it as an unprivileged account, on data made in a namespace, and back', async () => {
      chmodSync(outside, 0o711)
      const dataFolder = join(outside, 'data')
      expect((await count(dataFolder)).counted).toBe(1)
      barNamespaces()
      expect((await count(dataFolder)).counted).toBe(2)
      expect(statSync(join(dataFolder, 'postgres')).uid).not.toBe(0)
      vi.unstubAllEnvs()
      expect((await count(dataFolder)).counted).toBe(3)
      expect(statSync(join(dataFolder, 'postgres')).uid).toBe(0)
    })

    it('moves the data to where the account can reach it when the folder is for root alone, and says where', async () => {
      const dataFolder = join(outside, 'data')
      expect((await count(dataFolder)).counted).toBe(1)
      barNamespaces()
      const { counted, steps } = await count(dataFolder)
      expect(counted).toBe(2)
      const place = /^the database is kept in (\/var\/lib\/shaftbook\/[0-9a-f]{12}): /.exec(steps[0] ?? '')?.[1] ?? ''
      try {
        expect(statSync(place).mode & 0o777).toBe(0o700)
        expect(existsSync(join(dataFolder, 'postgres'))).toBe(false)
        expect((await count(dataFolder)).counted).toBe(3)
        vi.unstubAllEnvs()
        expect((await count(dataFolder)).counted).toBe(4)
      } finally {
        rmSync(place, { recursive: true })
      }
    })
  })
}
