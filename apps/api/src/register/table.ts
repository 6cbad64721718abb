import type { Endpoint } from '@shaftbook/contract/endpoint'
import type { z } from 'zod'
import type { SiteTx } from '../db/database.ts'
import { contains, type PageSpec } from '../db/list-page.ts'

/** The endpoints of a plain register table, as `registerEndpoints` of the contract makes them. */
export interface RegisterEndpoints {
  readonly New: z.ZodObject
  readonly noun: string
  readonly list: Endpoint
  readonly read: Endpoint
  readonly create: Endpoint
  readonly change: Endpoint
}

/** What a person entered, by the contract's field names. */
export type Fields = Record<string, unknown>

/** Where a field is stored; micrometres are stored as whole nanometres. */
export interface Column {
  readonly column: string
  readonly as: 'plain' | 'instant' | 'day' | 'nanometres' | 'list of nanometres'
}

/** A condition of a list in SQL: `column` names a column, `value` passes a parameter. */
export type Filter = (
  column: (name: string) => string,
  value: (parameter: unknown) => string,
  wanted: unknown,
) => string
export type Sort = Omit<PageSpec['sort'], 'descending'>

type FieldOf<E extends RegisterEndpoints> = Exclude<keyof z.output<E['New']>, 'id'>
type QueryOf<E extends RegisterEndpoints> = E['list']['query'] extends z.ZodType ? z.output<E['list']['query']> : never
type FilterOf<E extends RegisterEndpoints> = Exclude<keyof QueryOf<E>, 'limit' | 'cursor' | 'sort'>
type SortOf<E extends RegisterEndpoints> =
  QueryOf<E> extends { sort: infer S } ? (S extends `-${string}` ? never : S) : never

/** A write of one row, for what has to be checked or brought up to date around it. */
export interface Written<Row = Fields> {
  readonly id: string
  readonly before: Row | undefined
  readonly after: Row
  readonly now: Date
}

interface Storage<E extends RegisterEndpoints> {
  readonly table: string
  readonly columns: Readonly<Record<FieldOf<E>, string | Column>>
  readonly filters: Readonly<Record<FilterOf<E>, Filter>>
  readonly sorts: Readonly<Record<SortOf<E> & string, Sort>>
  /** Holds what acts at the shaft hold too, before a row is changed: all take their locks in this order. */
  readonly hold?: (tx: SiteTx, id: string) => Promise<void>
  /** Refuses a row that contradicts itself, before it is written. */
  readonly check?: (written: Written<z.output<E['New']>>) => void
  /** Brings up to date what hangs on the row, in the same transaction, after it is written. */
  readonly follow?: (tx: SiteTx, written: Written<z.output<E['New']>>) => Promise<void>
}

/** One register table: the one declaration that its list, read, create and change go by. */
export interface RegisterTable {
  readonly endpoints: RegisterEndpoints
  readonly table: string
  readonly columns: Readonly<Record<string, Column>>
  readonly filters: Readonly<Record<string, Filter>>
  readonly sorts: Readonly<Record<string, Sort>>
  readonly hold?: (tx: SiteTx, id: string) => Promise<void>
  readonly check?: (written: Written) => void
  readonly follow?: (tx: SiteTx, written: Written) => Promise<void>
}

/** States how a table is stored; a field, filter or sort of the contract that is left out does not compile. */
export function registerTable<E extends RegisterEndpoints>(endpoints: E, storage: Storage<E>): RegisterTable {
  const columns = Object.entries<string | Column>(storage.columns).map(([field, column]) => [
    field,
    typeof column === 'string' ? { column, as: 'plain' } : column,
  ])
  return { ...storage, endpoints, columns: Object.fromEntries(columns) } as unknown as RegisterTable
}

export function instant(column: string): Column {
  return { column, as: 'instant' }
}

export function day(column: string): Column {
  return { column, as: 'day' }
}

export function nanometres(column: string): Column {
  return { column, as: 'nanometres' }
}

export function nanometreList(column: string): Column {
  return { column, as: 'list of nanometres' }
}

/** Rows whose column is exactly what was asked for; `type` is its PostgreSQL type. */
export function equals(name: string, type: 'uuid' | 'text' | 'boolean'): Filter {
  return (column, value, wanted) => `${column(name)} = ${value(wanted)}::${type}`
}

/** Rows with the text anywhere in one of the columns; capitals do not matter. */
export function hasText(...names: string[]): Filter {
  return (column, value, wanted) => {
    const pattern = value(contains(String(wanted)))
    return `(${names.map((name) => `${column(name)} ilike ${pattern}`).join(' or ')})`
  }
}
