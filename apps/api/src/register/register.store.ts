import type { SiteTx, Sql } from '../db/database.ts'
import { readPage, Where, type PageQuery } from '../db/list-page.ts'
import { modelName, present, selectColumns, toStore, type StoredRow } from './row.ts'
import type { Fields, RegisterTable } from './table.ts'

/** The part of a Prisma model that the register uses. */
interface Model {
  findUnique(query: { where: object }): Promise<StoredRow | null>
  create(query: { data: object }): Promise<StoredRow>
  updateManyAndReturn(query: { where: object; data: object }): Promise<StoredRow[]>
}

function model(tx: SiteTx, table: RegisterTable): Model {
  return (tx.prisma as unknown as Record<string, Model>)[modelName(table.table)] as Model
}

export async function listRows(
  sql: Sql,
  siteId: string,
  table: RegisterTable,
  query: PageQuery & Fields,
): Promise<{ items: Fields[]; nextCursor: string | null }> {
  const where = Where.atSite('r', siteId)
  for (const [name, filter] of Object.entries(table.filters)) {
    if (query[name] !== undefined) where.add((value) => filter((column) => `r.${column}`, value, query[name]))
  }
  const wanted = String(query['sort'])
  const sort = table.sorts[wanted.replace(/^-/, '')]
  if (!sort) throw new Error(`${table.table} has no sort ${wanted}`)
  const spec = {
    select: selectColumns(table, 'r'),
    from: `${table.table} r`,
    where,
    sort: { ...sort, descending: wanted.startsWith('-') },
    id: 'r.id',
  }
  const { rows, nextCursor } = await readPage<StoredRow>(sql, spec, query)
  return { items: rows.map((row) => present(table, row)), nextCursor }
}

export async function findRow(tx: SiteTx, table: RegisterTable, id: string): Promise<Fields | undefined> {
  const row = await model(tx, table).findUnique({ where: { siteId_id: { siteId: tx.scope.siteId, id } } })
  return row ? present(table, row) : undefined
}

export async function insertRow(tx: SiteTx, table: RegisterTable, id: string, fields: Fields): Promise<Fields> {
  const data = { siteId: tx.scope.siteId, id, ...toStore(table, fields) }
  return present(table, await model(tx, table).create({ data }))
}

/** Writes the row if it still has this version; undefined where it has not. */
export async function updateRow(
  tx: SiteTx,
  table: RegisterTable,
  id: string,
  version: number,
  fields: Fields,
): Promise<Fields | undefined> {
  const where = { siteId: tx.scope.siteId, id, version }
  const [row] = await model(tx, table).updateManyAndReturn({ where, data: toStore(table, fields) })
  return row && present(table, row)
}
