import type { z } from 'zod'
import type { Role } from './roles.ts'

/**
 * Who may call an endpoint: anyone, anyone signed in, or people with one of these roles at the site in the path.
 */
export type Access = 'public' | 'signed-in' | readonly Role[]

export type MediaType =
  'application/pdf' | 'image/jpeg' | 'image/png' | 'image/svg+xml' | 'image/webp' | 'text/calendar'

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
  /** The body is a file of one of these media types, sent as it is, in place of JSON. */
  readonly takes?: readonly MediaType[]
  readonly replies: Readonly<Record<number, z.ZodType | null>>
  /** A success is answered with a file of one of these media types in place of JSON: `replies` says null for its status. */
  readonly gives?: readonly MediaType[]
  /** The request must say in If-Match which version it changes. */
  readonly ifMatch?: boolean
}

/** States an endpoint; keeps its exact type, so that a caller knows the body and the reply. */
export function endpoint<const E extends Endpoint>(definition: E): E {
  return definition
}

/** The reply with the lowest 2xx status, as a caller gets it. */
export type Reply<E extends Endpoint> = E extends { gives: readonly MediaType[] } ? Blob : JsonReply<E>

type JsonReply<E extends Endpoint> = 200 extends keyof E['replies']
  ? Output<E['replies'][200]>
  : 201 extends keyof E['replies']
    ? Output<E['replies'][201]>
    : undefined

type Output<S> = S extends z.ZodType ? z.output<S> : undefined
