import type { Endpoint, Reply } from '@shaftbook/contract/endpoint'
import { keptAnswer } from '../offline/kept-replies.ts'
import { isSilent, noteSilence, patienceMs } from '../offline/network.ts'
import { NoAnswerError } from './problem-error.ts'
import { request, urlOf, type AnyInput, type Input } from './request.ts'

/**
 * Calls an endpoint of the contract. Where the network is silent, what is kept on this device answers a GET.
 * Refusals throw ProblemError, a silent network without an answer on the device NoAnswerError.
 */
export async function call<E extends Endpoint>(endpoint: E, input: Input<E>, signal?: AbortSignal): Promise<Reply<E>> {
  if (endpoint.method !== 'GET') return await request(endpoint, input, signal)
  const kept = () => keptAnswer(endpoint, input as AnyInput) as Promise<Reply<E> | undefined>
  if (isSilent()) {
    const answer = await kept()
    if (answer !== undefined) return answer
  }
  const reply = request(endpoint, input, signal)
  const answered = await Promise.race([settled(reply), pause(patienceMs)])
  const answer = answered === 'answered' ? undefined : await kept()
  if (answer === undefined) return await reply.catch(forReader)
  noteSilence()
  return answer
}

/** How a request ended; a refusal is an answer too. */
function settled(reply: Promise<unknown>): Promise<'answered' | 'no-answer'> {
  return reply.then(
    () => 'answered' as const,
    (error: unknown) => (error instanceof NoAnswerError ? 'no-answer' : 'answered'),
  )
}

function pause(ms: number): Promise<'no-answer'> {
  return new Promise((resolve) => setTimeout(() => resolve('no-answer'), ms))
}

function forReader(error: unknown): never {
  if (!(error instanceof NoAnswerError)) throw error
  const text = 'The service does not answer, and this part of the book is not kept on this device.'
  throw new NoAnswerError(error.cause, text)
}

/** The address of an endpoint that is read by GET, for links and pictures. */
export function addressOf<E extends Endpoint & { method: 'GET' }>(endpoint: E, input: Input<E>): string {
  const { params = {}, query = {} } = input as AnyInput
  return urlOf(endpoint.path, params, query)
}
