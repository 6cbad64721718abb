import type { Endpoint, MediaType, Reply } from '@shaftbook/contract/endpoint'
import { Problem } from '@shaftbook/contract/problem'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import type { z } from 'zod'
import type { SignedIn, SiteMembership } from '../access/session.ts'
import type { Scope } from '../db/database.ts'
import { DomainError } from '../domain-error.ts'
import { isFile, sendFile, takeFiles, type FileReply } from './files.ts'
import { problemType } from './problems.ts'

declare module 'fastify' {
  interface FastifyRequest {
    signedIn: SignedIn | null
  }
  interface FastifyContextConfig {
    endpoint?: Endpoint
  }
}

type In<S> = S extends z.ZodType ? z.output<S> : undefined

/** What a handler gets: the checked request and, at a site, whose data it may touch. */
export interface Call<E extends Endpoint> {
  readonly params: In<E['params']>
  readonly query: In<E['query']>
  readonly body: E extends { takes: readonly MediaType[] } ? Buffer : In<E['body']>
  readonly signedIn: SignedIn
  readonly site: SiteMembership
  readonly scope: Scope
  /** The version in If-Match, on endpoints that ask for it. */
  readonly version: number
  readonly request: FastifyRequest
  readonly reply: FastifyReply
}

type Answer<E extends Endpoint> = E extends { gives: readonly MediaType[] } ? FileReply : Reply<E>

interface Limits {
  /** How large a body may be, where the usual 1 MB is not right. */
  readonly maxBodyBytes?: number
}

/**
 * Serves one endpoint of the contract: who may call it is checked first, then the request; the reply is checked on the way out.
 */
export function route<E extends Endpoint>(
  app: FastifyInstance,
  endpoint: E,
  handle: (call: Call<E>) => Promise<Answer<E>>,
  limits: Limits = {},
): void {
  const { takes } = endpoint
  if (takes === undefined) serveEndpoint(app, endpoint, handle, limits)
  else {
    void app.register(async (files) => {
      takeFiles(files, takes)
      serveEndpoint(files, endpoint, handle, limits)
    })
  }
}

function serveEndpoint<E extends Endpoint>(
  app: FastifyInstance,
  endpoint: E,
  handle: (call: Call<E>) => Promise<Answer<E>>,
  { maxBodyBytes }: Limits,
): void {
  const status = Math.min(...Object.keys(endpoint.replies).map(Number))
  app.route({
    method: endpoint.method,
    url: endpoint.path,
    config: { endpoint },
    ...(maxBodyBytes !== undefined && { bodyLimit: maxBodyBytes }),
    schema: {
      summary: endpoint.summary,
      operationId: endpoint.name,
      ...(endpoint.params && { params: endpoint.params }),
      ...(endpoint.query && { querystring: endpoint.query }),
      ...(endpoint.body && { body: endpoint.body }),
      response: { ...withoutNull(endpoint.replies), '4xx': problemReply, '5xx': problemReply },
    },
    handler: async (request, reply) => {
      const call = callOf(endpoint, request, reply)
      const result = await handle(call)
      reply.code(status)
      if (result === undefined) return reply.send()
      if (isFile(result)) return sendFile(request, reply, result)
      const version = (result as { version?: unknown }).version
      if (typeof version === 'number') reply.header('etag', `"${version}"`)
      return reply.send(result)
    },
  })
}

const problemReply = { description: 'Problem details', content: { [problemType]: { schema: Problem } } }

function withoutNull(replies: Endpoint['replies']): Record<string, z.ZodType> {
  return Object.fromEntries(Object.entries(replies).filter((entry): entry is [string, z.ZodType] => entry[1] !== null))
}

/** The site in the path as the person's membership there; not being a member and not existing look the same. */
export function membershipAt(signedIn: SignedIn, siteCode: string): SiteMembership {
  const site = signedIn.memberships.find((membership) => membership.siteCode === siteCode)
  if (!site) throw new DomainError('not-found', `There is no site "${siteCode}" that you belong to.`)
  return site
}

function callOf<E extends Endpoint>(endpoint: E, request: FastifyRequest, reply: FastifyReply): Call<E> {
  const siteCode = (request.params as { site?: string }).site
  const site = siteCode !== undefined && request.signedIn ? membershipAt(request.signedIn, siteCode) : undefined
  const known = {
    params: request.params,
    query: request.query,
    body: request.body,
    signedIn: request.signedIn,
    site,
    scope: site && { siteId: site.siteId, personId: request.signedIn?.id ?? null },
    version: endpoint.ifMatch ? versionOf(request.headers['if-match']) : 0,
    request,
    reply,
  }
  return known as unknown as Call<E>
}

function versionOf(ifMatch: string | undefined): number {
  if (ifMatch === undefined) {
    throw new DomainError(
      'if-match-missing',
      'Send If-Match with the version that you read, so that no change of somebody else is lost.',
    )
  }
  const version = /^(?:W\/)?"(\d{1,9})"$/.exec(ifMatch.trim())?.[1]
  if (version === undefined)
    throw new DomainError('request-invalid', 'If-Match holds one version in quotes, such as "3".')
  return Number(version)
}
