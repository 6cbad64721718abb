import { nmFromUm, umFromNm } from '../db/units.ts'
import type { Column, Fields, RegisterTable } from './table.ts'

/** A row as Prisma, pg or PostgreSQL's JSON hand it out, by the names of `stored`. */
export type StoredRow = Readonly<Record<string, unknown>>

/** `own_reduction_min_nm` -> `ownReductionMinNm`, the name that the row has in Prisma and in our own selects. */
export function stored(column: string): string {
  return column.replaceAll(/_([a-z0-9])/g, (_, letter: string) => letter.toUpperCase())
}

/** A table's name in Prisma: `bearing_type` -> `bearingType`. */
export const modelName = stored

const common: Readonly<Record<string, Column>> = {
  id: { column: 'id', as: 'plain' },
  version: { column: 'version', as: 'plain' },
  createdAt: { column: 'created_at', as: 'instant' },
  updatedAt: { column: 'updated_at', as: 'instant' },
}

function allColumns(table: RegisterTable): Column[] {
  return [...Object.values(common), ...Object.values(table.columns)]
}

/** What a select of the table lists. */
export function selectColumns(table: RegisterTable, alias: string): string {
  return allColumns(table)
    .map(({ column, as }) => `${alias}.${column}${as === 'day' ? '::text' : ''} as "${stored(column)}"`)
    .join(', ')
}

/** One row of the table as one JSON value, for selects that join several tables; null where the join found nothing. */
export function selectJson(table: RegisterTable, alias: string): string {
  const pairs = allColumns(table).map(({ column }) => `'${stored(column)}', ${alias}.${column}`)
  return `case when ${alias}.id is null then null else jsonb_build_object(${pairs.join(', ')}) end`
}

/** A stored row as the contract shows it. */
export function present(table: RegisterTable, row: StoredRow): Fields {
  const fields = Object.entries({ ...common, ...table.columns }).map(([field, column]) => [
    field,
    shown(column, row[stored(column.column)]),
  ])
  return Object.fromEntries(fields)
}

function shown({ as }: Column, value: unknown): unknown {
  if (value === null || value === undefined) return null
  if (as === 'instant') return new Date(value as string | Date).toISOString()
  if (as === 'day') return value instanceof Date ? value.toISOString().slice(0, 10) : value
  if (as === 'list of nanometres') return (value as number[]).map((nm) => umFromNm(nm))
  return as === 'nanometres' ? umFromNm(value as number) : value
}

/** What a person entered, as Prisma writes it. */
export function toStore(table: RegisterTable, fields: Fields): Record<string, unknown> {
  const entries = Object.entries(table.columns).map(([field, column]) => [
    stored(column.column),
    kept(column, fields[field]),
  ])
  return Object.fromEntries(entries)
}

function kept({ as }: Column, value: unknown): unknown {
  if (value === null || value === undefined) return null
  if (as === 'instant' || as === 'day') return new Date(value as string)
  if (as === 'list of nanometres') return (value as number[]).map((um) => nmFromUm(um))
  return as === 'nanometres' ? nmFromUm(value as number) : value
}
