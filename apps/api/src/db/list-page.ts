import { fieldError } from '../domain-error.ts'
import type { Sql } from './database.ts'

/** Collects the conditions of a query with their parameters. */
export class Where {
  readonly values: unknown[] = []
  readonly #conditions: string[] = []

  /** `where.add((value) => `p.area_id = ${value(areaId)}::uuid`)` */
  add(condition: (value: (parameter: unknown) => string) => string): this {
    this.#conditions.push(condition((parameter) => this.parameter(parameter)))
    return this
  }

  /** Adds the condition only where the filter was given. */
  addIf<T>(filter: T | undefined, condition: (value: string) => string): this {
    return filter === undefined ? this : this.add((value) => condition(value(filter)))
  }

  /** Only rows of this site: row-level security says so too, the condition also says it where rows are spread by site. */
  static atSite(alias: string, siteId: string): Where {
    return new Where().add((value) => `${alias}.site_id = ${value(siteId)}::uuid`)
  }

  /** Adds a parameter and returns its place, e.g. `$3`. */
  parameter(value: unknown): string {
    this.values.push(value)
    return `$${this.values.length}`
  }

  toString(): string {
    return this.#conditions.length === 0 ? 'true' : this.#conditions.join(' and ')
  }
}

export interface PageQuery {
  readonly limit: number
  readonly cursor?: string | undefined
}

export interface PageSpec {
  readonly select: string
  /** A table and its alias; with the tables joined to it that filter or sort. */
  readonly from: string
  /** Joined to the rows of the page only, after they are picked: tables that neither filter nor sort. */
  readonly join?: string
  readonly where: Where
  /** The column to sort by, never null, and its PostgreSQL type; ties go by id. An index must serve both. */
  readonly sort: {
    readonly column: string
    readonly type: 'text' | 'timestamptz' | 'date' | 'float8' | 'int4'
    readonly descending: boolean
  }
  readonly id: string
}

interface PageKey {
  page_key: string
  page_id: string
}

/** Reads one page behind the cursor in one statement: an index range scan, however far the page lies. */
export async function readPage<Row extends object>(
  sql: Sql,
  spec: PageSpec,
  { limit, cursor }: PageQuery,
): Promise<{ rows: Row[]; nextCursor: string | null }> {
  const { where, sort, id } = spec
  const direction = sort.descending ? 'desc' : 'asc'
  if (cursor !== undefined) {
    const [key, lastId] = decodeCursor(cursor)
    const compare = sort.descending ? '<' : '>'
    where.add(
      (value) => `(${sort.column}, ${id}) ${compare} (${value(key)}::text::${sort.type}, ${value(lastId)}::uuid)`,
    )
  }
  const order = `order by ${sort.column} ${direction}, ${id} ${direction}`
  const picked = `where ${where.toString()} ${order} limit ${where.parameter(limit + 1)}`
  const keys = `(${sort.column})::text as page_key, ${id} as page_id`
  const [, alias] = spec.from.split(' ')
  const text = spec.join
    ? `select ${spec.select}, ${keys} from (select ${alias}.* from ${spec.from} ${picked}) ${alias} ${spec.join} ${order}`
    : `select ${spec.select}, ${keys} from ${spec.from} ${picked}`
  const rows = await sql<Row & PageKey>(text, where.values)
  const last = rows.length > limit ? rows[limit - 1] : undefined
  return { rows: rows.slice(0, limit), nextCursor: last ? encodeCursor(last) : null }
}

function encodeCursor(last: PageKey): string {
  return Buffer.from(JSON.stringify([last.page_key, last.page_id])).toString('base64url')
}

function decodeCursor(cursor: string): [string, string] {
  try {
    const [key, id] = JSON.parse(Buffer.from(cursor, 'base64url').toString()) as unknown[]
    if (typeof key === 'string' && typeof id === 'string' && /^[0-9a-f-]{36}$/.test(id)) return [key, id]
  } catch {
    // not one of ours: refused below like any other
  }
  throw fieldError(
    'request-invalid',
    'cursor',
    'The cursor is not one that this list gave out: start again without it.',
  )
}

/** Text to look for anywhere, safe inside a LIKE pattern. */
export function contains(text: string): string {
  return `%${text.replaceAll(/[\\%_]/g, String.raw`\$&`)}%`
}
