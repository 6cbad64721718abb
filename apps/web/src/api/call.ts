import type { Endpoint, Reply } from '@shaftbook/contract/endpoint'
import { Problem } from '@shaftbook/contract/problem'
import type { z } from 'zod'
import { NoAnswerError, ProblemError } from './problem-error.ts'

type In<S> = S extends z.ZodType ? z.input<S> : never

/** What a caller gives: exactly what the endpoint asks for. */
export type Input<E extends Endpoint> = (E extends { params: z.ZodObject } ? { params: In<E['params']> } : unknown) &
  (E extends { query: z.ZodObject } ? { query?: In<E['query']> } : unknown) &
  (E extends { body: z.ZodType } ? { body: In<E['body']> } : unknown) &
  (E extends { takes: readonly string[] } ? { body: Blob } : unknown) &
  (E extends { ifMatch: true } ? { version: number } : unknown)

type QueryValue = string | number | boolean | null | undefined

interface AnyInput {
  readonly params?: Record<string, string>
  readonly query?: Record<string, QueryValue>
  readonly body?: unknown
  readonly version?: number
}

/** Calls an endpoint of the contract. Refusals throw ProblemError, a silent network NoAnswerError. */
export async function call<E extends Endpoint>(endpoint: E, input: Input<E>, signal?: AbortSignal): Promise<Reply<E>> {
  const { params = {}, query = {}, body, version } = input as AnyInput
  const response = await fetch(urlOf(endpoint.path, params, query), {
    method: endpoint.method,
    credentials: 'same-origin',
    headers: {
      accept: [...(endpoint.gives ?? []), 'application/json'].join(', '),
      ...(body !== undefined && { 'content-type': body instanceof Blob ? body.type : 'application/json' }),
      ...(version !== undefined && { 'if-match': `"${version}"` }),
    },
    ...(body !== undefined && { body: body instanceof Blob ? body : JSON.stringify(body) }),
    ...(signal && { signal }),
  }).catch((error: unknown) => {
    if (signal?.aborted) throw error
    throw new NoAnswerError(error)
  })
  if (response.ok) return (await contentOf(endpoint, response)) as Reply<E>
  throw await refusalOf(response)
}

async function contentOf(endpoint: Endpoint, response: Response): Promise<unknown> {
  if (endpoint.gives !== undefined) return await response.blob()
  return response.status === 204 ? undefined : await response.json()
}

/** The address of an endpoint that is read by GET, for links and pictures. */
export function addressOf<E extends Endpoint & { method: 'GET' }>(endpoint: E, input: Input<E>): string {
  const { params = {}, query = {} } = input as AnyInput
  return urlOf(endpoint.path, params, query)
}

function urlOf(path: string, params: Record<string, string>, query: Record<string, QueryValue>): string {
  const filled = path.replaceAll(/:([a-zA-Z]+)/g, (_match, name: string) => encodeURIComponent(params[name] ?? ''))
  const search = new URLSearchParams()
  for (const [name, value] of Object.entries(query)) {
    if (value !== undefined && value !== null && value !== '') search.set(name, String(value))
  }
  return search.size > 0 ? `${filled}?${search}` : filled
}

async function refusalOf(response: Response): Promise<Error> {
  const parsed = Problem.safeParse(await response.json().catch(() => null))
  return parsed.success ? new ProblemError(parsed.data) : new NoAnswerError(new Error(`HTTP ${response.status}`))
}
