import type { Endpoint, Reply } from '@shaftbook/contract/endpoint'
import { request, urlOf, type AnyInput, type Input } from './request.ts'

/** Calls an endpoint of the contract. Refusals throw ProblemError, a silent network NoAnswerError. */
export function call<E extends Endpoint>(endpoint: E, input: Input<E>, signal?: AbortSignal): Promise<Reply<E>> {
  return request(endpoint, input, signal)
}

/** The address of an endpoint that is read by GET, for links and pictures. */
export function addressOf<E extends Endpoint & { method: 'GET' }>(endpoint: E, input: Input<E>): string {
  const { params = {}, query = {} } = input as AnyInput
  return urlOf(endpoint.path, params, query)
}
