import type { Endpoint } from '@shaftbook/contract/endpoint'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { findSession, sessionCookie } from '../access/session.ts'
import type { Context } from '../context.ts'
import { DomainError } from '../domain-error.ts'
import { membershipAt } from './route.ts'

/** In this scope only people who are signed in and may call the endpoint get past. */
export function guardSignedIn(app: FastifyInstance, { db }: Context): void {
  app.addHook('onRequest', async (request) => {
    const token = request.cookies[sessionCookie]
    const signedIn = token ? await findSession(db, token) : undefined
    if (!signedIn) throw new DomainError('not-signed-in', 'Sign in first: your session is over or was never opened.')
    request.signedIn = signedIn
    const endpoint = request.routeOptions.config.endpoint
    if (endpoint) checkRole(endpoint, request)
  })
}

function checkRole(endpoint: Endpoint, request: FastifyRequest): void {
  if (typeof endpoint.access === 'string' || !request.signedIn) return
  const { role, siteName } = membershipAt(request.signedIn, (request.params as { site: string }).site)
  if (!endpoint.access.includes(role)) {
    const needed = endpoint.access.join(', ')
    throw new DomainError('role-not-allowed', `At ${siteName} you are ${role}; this needs one of: ${needed}.`)
  }
}

/** What the API answers stays in no cache: a shared tablet has nothing left of it once a person signs out. */
export function guardCaches(app: FastifyInstance): void {
  app.addHook('onRequest', async (request, reply) => {
    if (request.url.startsWith('/api/')) reply.header('cache-control', 'no-store')
  })
}

/** A request that changes something must come from our own pages: SameSite keeps the cookie away, this refuses the rest. */
export function guardOrigin(app: FastifyInstance): void {
  app.addHook('onRequest', async (request) => {
    if (request.method === 'GET' || request.method === 'HEAD') return
    const { origin } = request.headers
    const crossSite = request.headers['sec-fetch-site'] === 'cross-site'
    if (crossSite || (origin !== undefined && hostOf(origin) !== request.host)) {
      throw new DomainError('origin-not-allowed', 'Changes are taken only from the pages of this service.')
    }
  })
}

function hostOf(origin: string): string | undefined {
  return URL.canParse(origin) ? new URL(origin).host : undefined
}
