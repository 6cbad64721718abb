import { z } from 'zod'
import { page, pageQuery, recordParams, rowShape, siteParams, Id } from './common.ts'
import { changeOf } from './change-of.ts'
import { endpoint } from './endpoint.ts'
import { everyone, type Role } from './roles.ts'
import { sitePath } from './site-path.ts'

interface RegisterOptions<N extends string, B extends z.ZodRawShape, F extends z.ZodRawShape, S extends string> {
  /** Plural, as in the path. */
  readonly plural: N
  /** What one row is called in a sentence. */
  readonly noun: string
  /** The fields that a person enters. */
  readonly fields: z.ZodObject<B>
  readonly filters: z.ZodObject<F>
  /** Field names that the list can be sorted by; the first is the default. `-name` sorts downwards. */
  readonly sorts: readonly [S, ...S[]]
  readonly writers: readonly Role[]
}

/**
 * The four endpoints of a plain register table: list, read, create with a client-made id, change with If-Match.
 */
export function registerEndpoints<N extends string, B extends z.ZodRawShape, F extends z.ZodRawShape, S extends string>(
  options: RegisterOptions<N, B, F, S>,
) {
  const { plural, noun, fields, filters, sorts, writers } = options
  const Row = z.object({ ...rowShape, ...fields.shape })
  const New = z.object({ id: Id, ...fields.shape })
  const Change = changeOf(fields)
  const sort = z.enum([...sorts, ...sorts.map((name) => `-${name}` as const)]).default(sorts[0] as never)
  return {
    Row,
    New,
    Change,
    noun,
    list: endpoint({
      name: `list-${plural}`,
      method: 'GET',
      path: sitePath(plural),
      access: everyone,
      summary: `A page of the site's ${plural.replaceAll('-', ' ')}`,
      params: siteParams,
      query: z.object({ ...pageQuery, ...filters.shape, sort }),
      replies: { 200: page(Row) },
    }),
    read: endpoint({
      name: `read-${plural}`,
      method: 'GET',
      path: sitePath(`${plural}/:id`),
      access: everyone,
      summary: `One ${noun}`,
      params: recordParams,
      replies: { 200: Row },
    }),
    create: endpoint({
      name: `create-${plural}`,
      method: 'POST',
      path: sitePath(plural),
      access: writers,
      summary: `Enter a new ${noun}; the same id with the same body answers the first record again`,
      params: siteParams,
      body: New,
      replies: { 201: Row },
    }),
    change: endpoint({
      name: `change-${plural}`,
      method: 'PATCH',
      path: sitePath(`${plural}/:id`),
      access: writers,
      summary: `Change one ${noun}; If-Match names the version that was read`,
      params: recordParams,
      body: Change,
      ifMatch: true,
      replies: { 200: Row },
    }),
  }
}
