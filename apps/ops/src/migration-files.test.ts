import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { outstanding, readMigrations } from './migration-files.ts'

describe('readMigrations', () => {
  let folder = ''
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'migrations-'))
  })
  afterEach(() => rmSync(folder, { recursive: true }))

  function write(name: string, sql: string): void {
    mkdirSync(join(folder, name))
    writeFileSync(join(folder, name, 'migration.sql'), sql)
  }

  it('orders by stamp, whatever order the folder lists', () => {
    for (const name of ['20270301000000_c', '20261124000000_a', '20261124000100_b']) write(name, 'select 1;')
    expect(readMigrations(folder).map((file) => file.name)).toEqual([
      '20261124000000_a',
      '20261124000100_b',
      '20270301000000_c',
    ])
  })

  it('leaves out what is no migration', () => {
    write('20261124000000_a', 'select 1;')
    mkdirSync(join(folder, '20261125000000_empty'))
    writeFileSync(join(folder, 'migration_lock.toml'), '')
    expect(readMigrations(folder)).toHaveLength(1)
  })

  it("has SHA-256 of the text as checksum, the same for Windows' line ends", () => {
    write('1', 'abc\nabc')
    write('2', 'abc\r\nabc')
    // printf 'abc\nabc' | sha256sum
    const digest = '8805d2466f4ff27a9d1a81c4f400d902b02f5ce657fbaa696126d8947b20d442'
    expect(readMigrations(folder).map((file) => file.checksum)).toEqual([digest, digest])
  })
})

describe('outstanding', () => {
  const files = ['a', 'b', 'c'].map((name) => ({ name, sql: '', checksum: `sum of ${name}` }))
  const recorded = (names: string[]) => names.map((name) => ({ name, checksum: `sum of ${name}` }))

  it('is what is not recorded, in order', () => {
    expect(outstanding(files, []).map((file) => file.name)).toEqual(['a', 'b', 'c'])
    expect(outstanding(files, recorded(['a'])).map((file) => file.name)).toEqual(['b', 'c'])
    expect(outstanding(files, recorded(['a', 'b', 'c']))).toEqual([])
  })

  it('includes one that was added between recorded ones', () => {
    expect(outstanding(files, recorded(['a', 'c'])).map((file) => file.name)).toEqual(['b'])
  })

  it('refuses a database with a migration that these files do not have', () => {
    expect(() => outstanding(files, recorded(['a', 'z']))).toThrow(/has the migration z, .* newer version/)
  })

  it('refuses a database that got a migration in another wording', () => {
    expect(() => outstanding(files, [{ name: 'b', checksum: 'other' }])).toThrow(/b was changed after/)
  })
})
