import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest'
import { withClient } from '../../apps/ops/src/database-client.ts'
import { migrate } from '../../apps/ops/src/migrate.ts'

describe('migrate(ownerUrl)', () => {
  const { adminUrl } = inject('databaseServer')
  const empty = new URL(adminUrl)
  empty.pathname = '/t_migrate_empty'
  let folder = ''

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'migrations-'))
    await withClient(adminUrl, (client) => client.query('create database t_migrate_empty template template0'))
  })
  afterEach(async () => {
    rmSync(folder, { recursive: true })
    await withClient(adminUrl, (client) => client.query('drop database t_migrate_empty with (force)'))
  })

  function write(name: string, sql: string): void {
    mkdirSync(join(folder, name), { recursive: true })
    writeFileSync(join(folder, name, 'migration.sql'), sql)
  }

  function query(sql: string): Promise<Record<string, unknown>[]> {
    return withClient(empty.href, async (client) => (await client.query<Record<string, unknown>>(sql)).rows)
  }

  it('applies in order and leaves the rows that Prisma reads', async () => {
    write('2_second', 'alter table shelf add column height int')
    write('1_first', 'create table shelf (width int)')
    expect(await migrate(empty.href, undefined, folder)).toEqual(['1_first', '2_second'])
    expect(await migrate(empty.href, undefined, folder)).toEqual([])
    const rows = await query(
      `select migration_name, length(checksum) as digits, finished_at >= started_at as finished, rolled_back_at,
       applied_steps_count from _prisma_migrations order by finished_at`,
    )
    const whole = { digits: 64, finished: true, rolled_back_at: null, applied_steps_count: 1 }
    expect(rows).toEqual([
      { migration_name: '1_first', ...whole },
      { migration_name: '2_second', ...whole },
    ])
  })

  it('takes semicolons in comments, strings and function bodies for what they are', async () => {
    write(
      '1_function',
      `-- one thing; another thing
       create function twice(x int) returns int language plpgsql as $$ begin x := x * 2; return x; end $$;
       create table note (text text default 'a; b');`,
    )
    await migrate(empty.href, undefined, folder)
    expect(await query('select twice(21) as answer')).toEqual([{ answer: 42 }])
  })

  it('of a migration that fails keeps nothing, names it with its line, and goes on when it is mended', async () => {
    write('1_first', 'create table shelf (width int)')
    write('2_broken', 'create table half (a int);\n\ninsert into hlaf values (1);')
    write('3_third', 'create table last (a int)')
    await expect(migrate(empty.href, undefined, folder)).rejects.toThrow(
      'The migration 2_broken failed in line 3, and nothing of it stays. The database says: relation "hlaf" does not exist',
    )
    expect(await query("select to_regclass('half') as half, to_regclass('last') as last")).toEqual([
      { half: null, last: null },
    ])
    write('2_broken', 'create table half (a int);\n\ninsert into half values (1);')
    expect(await migrate(empty.href, undefined, folder)).toEqual(['2_broken', '3_third'])
  })

  it('lets a second one at the same time wait, which then finds nothing to do', async () => {
    write('1_slow', 'create table shelf (width int); select pg_sleep(1)')
    const heard: string[] = []
    const both = await Promise.all([1, 2].map(() => migrate(empty.href, (text) => heard.push(text), folder)))
    expect(both.flat()).toEqual(['1_slow'])
    expect(heard.toSorted()).toEqual(['1_slow', 'waiting for another process that is migrating this database'])
  })

  it('of a migration whose connection is cut keeps nothing', async () => {
    write('1_cut', 'create table shelf (width int); select pg_terminate_backend(pg_backend_pid())')
    await expect(migrate(empty.href, undefined, folder)).rejects.toThrow(/The migration 1_cut failed/)
    expect(await query("select to_regclass('shelf') as shelf")).toEqual([{ shelf: null }])
  })

  it('refuses a database of a newer version and one whose migration was worded differently', async () => {
    write('1_first', 'create table shelf (width int)')
    write('2_newer', 'create table later (a int)')
    await migrate(empty.href, undefined, folder)
    rmSync(join(folder, '2_newer'), { recursive: true })
    await expect(migrate(empty.href, undefined, folder)).rejects.toThrow(
      /has the migration 2_newer, which this Shaftbook/,
    )
    write('2_newer', 'create table later (a int, b int)')
    await expect(migrate(empty.href, undefined, folder)).rejects.toThrow(/2_newer was changed after/)
  })
})
