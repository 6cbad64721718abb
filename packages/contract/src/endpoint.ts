import type { z } from 'zod'
import type { Role } from './roles.ts'

/**
 * Who may call an endpoint: anyone, anyone signed in, or people with one of these roles at the site in the path.
 */
export type Access = 'public' | 'signed-in' | readonly Role[]

/** One operation of the API, as both sides know it. `replies` maps the status to the schema of its body (null: no body). */
export interface Endpoint {
  readonly name: string
  readonly method: 'GET' | 'POST' | 'PATCH' | 'DELETE'
  readonly path: `/api/v1/${string}`
  readonly access: Access
  readonly summary: string
  readonly params?: z.ZodObject
  readonly query?: z.ZodObject
  readonly body?: z.ZodType
  readonly replies: Readonly<Record<number, z.ZodType | null>>
  /** The request must say in If-Match which version it changes. */
  readonly ifMatch?: boolean
}

/** States an endpoint; keeps its exact type, so that a caller knows the body and the reply. */
export function endpoint<const E extends Endpoint>(definition: E): E {
  return definition
}

/** The schema of the reply with the lowest 2xx status. */
export type Reply<E extends Endpoint> = 200 extends keyof E['replies']
  ? Output<E['replies'][200]>
  : 201 extends keyof E['replies']
    ? Output<E['replies'][201]>
    : undefined

type Output<S> = S extends z.ZodType ? z.output<S> : undefined
