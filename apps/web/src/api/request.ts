import type { Endpoint, Reply } from '@shaftbook/contract/endpoint'
import { Problem } from '@shaftbook/contract/problem'
import type { z } from 'zod'
import { noteAnswer, noteSilence } from '../offline/network.ts'
import { NoAnswerError, ProblemError } from './problem-error.ts'

type In<S> = S extends z.ZodType ? z.input<S> : never

/** What a caller gives: exactly what the endpoint asks for. */
export type Input<E extends Endpoint> = (E extends { params: z.ZodObject } ? { params: In<E['params']> } : unknown) &
  (E extends { query: z.ZodObject } ? { query?: In<E['query']> } : unknown) &
  (E extends { body: z.ZodType } ? { body: In<E['body']> } : unknown) &
  (E extends { takes: readonly string[] } ? { body: Blob } : unknown) &
  (E extends { ifMatch: true } ? { version: number } : unknown)

type QueryValue = string | number | boolean | null | undefined

export interface AnyInput {
  readonly params?: Record<string, string>
  readonly query?: Record<string, QueryValue>
  readonly body?: unknown
  readonly version?: number
}

/** Sends a request to the service and nowhere else. Refusals throw ProblemError, a silent network NoAnswerError. */
export async function request<E extends Endpoint>(
  endpoint: E,
  input: Input<E>,
  signal?: AbortSignal,
): Promise<Reply<E>> {
  const { params = {}, query = {}, body, version } = input as AnyInput
  const askedAtMs = performance.now()
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
  }).catch((error: unknown) => nobodyAnswered(error, signal))
  if (response.ok) {
    noteAnswer(askedAtMs)
    // the network may be cut between the head of the answer and its end
    const content = await contentOf(endpoint, response).catch((error: unknown) => nobodyAnswered(error, signal))
    return content as Reply<E>
  }
  const refusal = await refusalOf(response)
  if (refusal instanceof ProblemError) noteAnswer(askedAtMs)
  else noteSilence()
  throw refusal
}

/** A request that its caller took back is no sign of a silent network; one that took too long is. */
function nobodyAnswered(error: unknown, signal: AbortSignal | undefined): never {
  const tookTooLong = error instanceof DOMException && error.name === 'TimeoutError'
  if (signal?.aborted && !tookTooLong) throw error
  noteSilence()
  throw new NoAnswerError(error)
}

async function contentOf(endpoint: Endpoint, response: Response): Promise<unknown> {
  if (endpoint.gives !== undefined) return await response.blob()
  return response.status === 204 ? undefined : await response.json()
}

/** An endpoint's path with its parameters filled in. */
export function urlOf(path: string, params: Record<string, string>, query: Record<string, QueryValue>): string {
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
