import diagnostics from 'node:diagnostics_channel'
import { randomUUID } from 'node:crypto'
import { allEndpoints } from '@shaftbook/contract/all-endpoints'
import type { Endpoint } from '@shaftbook/contract/endpoint'
import { Problem } from '@shaftbook/contract/problem'
import { Role } from '@shaftbook/contract/roles'
import type { FastifyInstance, RouteOptions } from 'fastify'
import supertest from 'supertest'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp } from '../support/app.ts'

/** Served without a place in the contract: the document that describes it, open to anyone. */
const besides = ['GET /api/v1/openapi.json']

const routes: RouteOptions[] = []
diagnostics.subscribe('fastify.initialization', (message) => {
  const { fastify } = message as { fastify: FastifyInstance }
  fastify.addHook('onRoute', (route) => {
    routes.push(route)
  })
})
const service = useTestApp()

function address(endpoint: Endpoint, siteCode = 'alpha'): string {
  return endpoint.path.replace(':site', siteCode).replaceAll(/:\w+/g, randomUUID())
}

function call(endpoint: Endpoint, cookie: string | undefined, siteCode?: string): supertest.Test {
  const method = endpoint.method.toLowerCase() as 'get' | 'post' | 'patch' | 'delete'
  const request = supertest(service.app.server)[method](address(endpoint, siteCode))
  return cookie === undefined ? request : request.set('cookie', cookie)
}

async function cookieOf(role: Role): Promise<string> {
  const { email, password } = service.alpha.people[role]
  const reply = await supertest(service.app.server).post('/api/v1/session').send({ email, password })
  return String(reply.headers['set-cookie']).split(';')[0] as string
}

describe('the contract', () => {
  it('has every route that the service serves, and the service serves every endpoint', () => {
    const served = routes.flatMap((route) =>
      [route.method].flat().map((method) => ({ key: `${method} ${route.url}`, method, route })),
    )
    const wanted = allEndpoints.map((endpoint) => `${endpoint.method} ${endpoint.path}`)
    const found = served.filter(({ method }) => method !== 'HEAD').map(({ key }) => key)
    expect(found.toSorted()).toEqual([...wanted, ...besides].toSorted())
  })

  it('names every endpoint once', () => {
    expect(new Set(allEndpoints.map((endpoint) => endpoint.name)).size).toBe(allEndpoints.length)
  })

  it('lets anyone in at the few endpoints that have to be open', () => {
    const open = allEndpoints.filter((endpoint) => endpoint.access === 'public').map((endpoint) => endpoint.name)
    expect(open.toSorted()).toEqual(['health', 'read-calendar-feed', 'ready', 'sign-in'])
  })

  it('states the roles of every endpoint of a site, and no roles elsewhere', () => {
    const wrong = allEndpoints.filter((endpoint) => {
      const atSite = /^\/api\/v1\/sites\/:site(\/|$)/.test(endpoint.path)
      return atSite
        ? typeof endpoint.access === 'string' || endpoint.access.length === 0
        : Array.isArray(endpoint.access)
    })
    expect(wrong).toEqual([])
  })
})

describe('without a session', () => {
  it.each(
    allEndpoints
      .filter((endpoint) => endpoint.access !== 'public')
      .map((endpoint) => [endpoint.name, endpoint] as const),
  )('%s answers 401', async (_, endpoint) => {
    const reply = await call(endpoint, undefined)
    expect(reply.status).toBe(401)
    expect(Problem.parse(reply.body).code).toBe('not-signed-in')
  })

  it('a session that was never opened is no session', async () => {
    const [endpoint] = allEndpoints.filter(({ name }) => name === 'list-areas')
    const reply = await call(endpoint as Endpoint, 'shaftbook_session=made-up')
    expect(reply.status).toBe(401)
  })
})

describe('with a session', () => {
  const cookies = {} as Record<Role, string>
  beforeAll(async () => {
    for (const role of Role.options) cookies[role] = await cookieOf(role)
  })
  const siteEndpoints = allEndpoints.filter((endpoint) => typeof endpoint.access !== 'string')

  it.each(siteEndpoints.map((endpoint) => [endpoint.name, endpoint] as const))(
    '%s is refused to every role that is not named, and to no other',
    async (_, endpoint) => {
      for (const role of Role.options) {
        const reply = await call(endpoint, cookies[role])
        const allowed = endpoint.access.includes(role)
        expect([role, reply.status === 403]).toEqual([role, !allowed])
        expect([role, reply.status === 401 || reply.status >= 500]).toEqual([role, false])
      }
    },
  )

  it.each(siteEndpoints.map((endpoint) => [endpoint.name, endpoint] as const))(
    '%s answers 404 at a site where the person is not a member, as at a site that is not there',
    async (_, endpoint) => {
      const [elsewhere, nowhere] = [
        await call(endpoint, cookies.manager, 'beta'),
        await call(endpoint, cookies.manager, 'gamma'),
      ]
      expect([elsewhere.status, nowhere.status]).toEqual([404, 404])
      expect(elsewhere.body.detail.replace('beta', '')).toBe(nowhere.body.detail.replace('gamma', ''))
    },
  )
})
