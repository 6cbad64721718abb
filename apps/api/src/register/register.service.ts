import type { Context } from '../context.ts'
import type { Scope } from '../db/database.ts'
import type { PageQuery } from '../db/list-page.ts'
import { receive } from '../db/receipts.ts'
import { notFound, versionStale } from '../domain-error.ts'
import * as store from './register.store.ts'
import type { Fields, RegisterTable } from './table.ts'

type Row = Fields

export async function listRows({ db }: Context, table: RegisterTable, scope: Scope, query: PageQuery & Fields) {
  return await db.readSite(scope, (sql) => store.listRows(sql, scope.siteId, table, query))
}

export async function readRow({ db }: Context, table: RegisterTable, scope: Scope, id: string): Promise<Row> {
  const row = await db.withSite(scope, (tx) => store.findRow(tx, table, id))
  if (!row) throw notFound(table.endpoints.noun)
  return row
}

/** Enters a row under the id that the client made. The same request sent again is answered with the row that it made. */
export async function createRow(
  { db, now }: Context,
  table: RegisterTable,
  scope: Scope,
  body: Fields & { id: string },
): Promise<Row> {
  const { id } = body
  return await db.withSite(scope, async (tx) => {
    if ((await receive(tx, table.endpoints.create.name, id, body)) === 'new') {
      const written = { id, before: undefined, after: body, now: now() }
      table.check?.(written)
      await store.insertRow(tx, table, id, body)
      await table.follow?.(tx, written)
    }
    return (await store.findRow(tx, table, id)) as Row
  })
}

/** Changes the fields that are given, if nobody changed the row since the version that was read. */
export async function changeRow(
  { db, now }: Context,
  table: RegisterTable,
  scope: Scope,
  wanted: { id: string; version: number; change: Fields },
): Promise<Row> {
  const { id, version, change } = wanted
  const { noun } = table.endpoints
  return await db.withSite(scope, async (tx) => {
    await table.hold?.(tx, id)
    const before = await store.findRow(tx, table, id)
    if (!before) throw notFound(noun)
    if (before['version'] !== version) throw versionStale(noun, version)
    const written = { id, before, after: { ...before, ...change }, now: now() }
    table.check?.(written)
    const row = await store.updateRow(tx, table, id, version, written.after)
    if (!row) throw versionStale(noun, version)
    await table.follow?.(tx, written)
    return row
  })
}
