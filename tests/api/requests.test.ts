import { randomUUID } from 'node:crypto'
import { once } from 'node:events'
import { request as httpRequest, type IncomingMessage } from 'node:http'
import type { AddressInfo } from 'node:net'
import { Problem } from '@shaftbook/contract/problem'
import supertest from 'supertest'
import { beforeAll, describe, expect, it } from 'vitest'
import { buildApp } from '../../apps/api/src/app.ts'
import { Config } from '../../apps/api/src/config.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { rowCounts } from './shaft-work.ts'

const service = useTestApp({ signInTriesPerMinute: 8 })
let cookie: string
let engineer: SiteAgent

beforeAll(async () => {
  const { email, password } = service.alpha.people.engineer
  const reply = await supertest(service.app.server).post('/api/v1/session').send({ email, password })
  cookie = String(reply.headers['set-cookie']).split(';')[0] as string
  engineer = await service.signIn(service.alpha.people.engineer, 'alpha')
})

const areas = '/api/v1/sites/alpha/areas'
/** Of the right shape, but its key is no whole number, which the list sorts by. */
const madeUpCursor = Buffer.from(JSON.stringify(['first', randomUUID()])).toString('base64url')
function post(path = areas): supertest.Test {
  return supertest(service.app.server).post(path).set('cookie', cookie)
}

describe('a problem', () => {
  it('is problem+json with a stable code, a title, a sentence and the fields at fault in plain words', async () => {
    const body = { id: 'x', code: '', walkingOrder: 1.5 }
    const reply = await post().send(body)
    expect(reply.status).toBe(400)
    expect(reply.headers['content-type']).toMatch(/^application\/problem\+json/)
    expect(Problem.parse(reply.body)).toEqual({
      type: 'urn:shaftbook:problem:request-invalid',
      title: 'The request is not complete or not readable',
      status: 400,
      code: 'request-invalid',
      detail: 'Look again at id: takes an id (a UUID) (and 3 more).',
      fields: [
        { path: 'id', message: 'takes an id (a UUID)' },
        { path: 'code', message: 'Enter a name' },
        { path: 'name', message: 'is missing' },
        { path: 'walkingOrder', message: 'takes a whole number' },
      ],
    })
  })

  it.each([
    ['an address that is not there', 'get', '/api/v1/nothing', 404, 'not-found'],
    ['a page that is not there', 'get', '/nothing', 404, 'not-found'],
    ['a method that an address does not have', 'delete', areas, 404, 'not-found'],
    ['a query that cannot be read', 'get', `${areas}?limit=many`, 400, 'request-invalid'],
    ['a limit beyond 200', 'get', `${areas}?limit=201`, 400, 'request-invalid'],
    ['a sort that the list does not have', 'get', `${areas}?sort=colour`, 400, 'request-invalid'],
    ['a cursor of nobody', 'get', `${areas}?cursor=bm90aGluZw`, 400, 'request-invalid'],
    ['a cursor made up', 'get', `${areas}?cursor=${madeUpCursor}`, 400, 'request-invalid'],
    ['an id that is none', 'get', `${areas}/17`, 400, 'request-invalid'],
    ['an address with a bad escape', 'get', '/api/v1/%zz', 400, 'request-invalid'],
  ] as const)('answers %s', async (_, method, path, status, code) => {
    const reply = await supertest(service.app.server)[method](path).set('cookie', cookie)
    expect([reply.status, Problem.parse(reply.body).code]).toEqual([status, code])
  })
})

describe('a body', () => {
  it.each([
    ['that is no JSON', '{"id": ', 'application/json', 400, 'request-invalid'],
    ['that is empty', '', 'application/json', 400, 'request-invalid'],
    ['that reaches for a prototype', '{"__proto__": {"x": 1}}', 'application/json', 400, 'request-invalid'],
    ['of plain text', 'id=1', 'text/plain', 415, 'media-type-not-supported'],
    ['of a form', 'id=1', 'application/x-www-form-urlencoded', 415, 'media-type-not-supported'],
  ])('%s is refused', async (_, body, type, status, code) => {
    const reply = await post().set('content-type', type).send(body)
    expect([reply.status, reply.body.code]).toEqual([status, code])
  })

  it('of 50 MB is refused with 413 before it is read to its end, and nothing is written', async () => {
    const before = await rowCounts(service.owner, service.alpha.siteId)
    service.app.server.listen(0, '127.0.0.1')
    await once(service.app.server, 'listening')
    const { port } = service.app.server.address() as AddressInfo
    const reply = await sendZeros(port, 50_000_000)
    service.app.server.close()
    expect([reply.status, JSON.parse(reply.text).code]).toEqual([413, 'body-too-large'])
    expect(reply.sentBytes).toBeLessThan(50_000_000)
    expect(await rowCounts(service.owner, service.alpha.siteId)).toEqual(before)
  })

  /** Writes until the service answers, as a client that does not wait for the reply does. */
  async function sendZeros(port: number, bytes: number): Promise<{ status: number; text: string; sentBytes: number }> {
    const headers = { 'content-type': 'application/json', 'content-length': bytes, cookie }
    const request = httpRequest({ host: '127.0.0.1', port, path: areas, method: 'POST', headers })
    const closed = new AbortController()
    const answered = once(request, 'response') as Promise<[IncomingMessage]>
    request.on('error', () => closed.abort())
    const gone = once(request, 'close').catch(() => {})
    const chunk = Buffer.alloc(65_536, '0')
    let sentBytes = 0
    const writing = (async () => {
      while (!closed.signal.aborted && sentBytes < bytes) {
        sentBytes += chunk.length
        if (!request.write(chunk)) await Promise.race([once(request, 'drain', closed).catch(() => {}), gone])
      }
    })()
    const [response] = await answered
    closed.abort()
    let text = ''
    for await (const part of response) text += String(part)
    request.destroy()
    await writing
    return { status: response.statusCode ?? 0, text, sentBytes }
  }
})

describe('a change', () => {
  const area = () => ({ id: randomUUID(), code: `A-${randomUUID()}`, name: 'An area' })

  it.each([
    ['the page of another web site', { origin: 'https://elsewhere.example' }],
    ['a page without an origin to trust', { origin: 'null' }],
    ['another port of this machine', { origin: 'http://127.0.0.1:1' }],
    ['a browser that says cross-site', { 'sec-fetch-site': 'cross-site' }],
  ])('from %s is refused', async (_, headers) => {
    const reply = await post().set(headers).send(area())
    expect([reply.status, reply.body.code]).toEqual([403, 'origin-not-allowed'])
  })

  it('from our own page, or from a program without an origin, is taken', async () => {
    const own = await post().set({ host: 'book.example', origin: 'http://book.example' }).send(area())
    expect(own.status).toBe(201)
    expect((await engineer.post('/areas', area())).status).toBe(201)
  })
})

describe('behind a proxy that is trusted', () => {
  it('our own page is known by the address that the browser asked for', async () => {
    const config = { appUrl: service.database.appUrl, log: 'silent', trustProxy: true }
    const app = await buildApp(Config.parse(config))
    try {
      const from = async (origin: string) => {
        const headers = { cookie, origin, 'x-forwarded-host': 'book.example', 'x-forwarded-proto': 'https' }
        const payload = { id: randomUUID(), code: `A-${randomUUID()}`, name: 'An area' }
        return (await app.inject({ method: 'POST', url: areas, headers, payload })).statusCode
      }
      expect([await from('https://book.example'), await from('https://elsewhere.example')]).toEqual([201, 403])
    } finally {
      await app.close()
    }
  })

  it('tries to sign in are counted for the address that the proxy saw, not for one that the caller made up', async () => {
    const config = { appUrl: service.database.appUrl, log: 'silent', trustProxy: true, signInTriesPerMinute: 2 }
    const app = await buildApp(Config.parse(config))
    try {
      const statuses: number[] = []
      for (const madeUp of ['192.0.2.1', '192.0.2.2', '192.0.2.3']) {
        const headers = { 'x-forwarded-for': `${madeUp}, 198.51.100.7` }
        const payload = { email: 'nobody@alpha.example', password: 'wrong' }
        statuses.push((await app.inject({ method: 'POST', url: '/api/v1/session', headers, payload })).statusCode)
      }
      expect(statuses).toEqual([401, 401, 429])
    } finally {
      await app.close()
    }
  })

  it('is not believed where none is trusted', async () => {
    const headers = { origin: 'https://book.example', 'x-forwarded-host': 'book.example' }
    expect((await post().set(headers).send({ id: randomUUID(), code: 'P-1', name: 'An area' })).status).toBe(403)
  })
})

describe('what is answered', () => {
  it.each([areas, `${areas}/${randomUUID()}`, '/api/v1/session', '/api/v1/nowhere'])(
    'at %s is kept by no cache',
    async (path) => {
      const reply = await supertest(service.app.server).get(path).set('cookie', cookie)
      expect(reply.headers['cache-control']).toBe('no-store')
    },
  )
})

describe('signing in', () => {
  const session = '/api/v1/session'

  it('answers who it is and sets a cookie that scripts and other sites cannot use', async () => {
    const { id, email, password, name } = service.alpha.people.stores
    const reply = await supertest(service.app.server).post(session).send({ email: email.toUpperCase(), password })
    expect(reply.body).toMatchObject({ id, name, email, memberships: [{ siteCode: 'alpha', role: 'stores' }] })
    const set = String(reply.headers['set-cookie'])
    expect(set).toMatch(/HttpOnly/)
    expect(set).toMatch(/SameSite=Strict/)
    expect(set).toMatch(/Path=\//)
    const stored = await service.owner.query<{ token: string }>(
      `select encode(token_hash, 'hex') as token from session`,
    )
    const token = /shaftbook_session=([^;]+)/.exec(set)?.[1] as string
    expect(stored.rows.map((row) => row.token)).not.toContain(Buffer.from(token, 'base64url').toString('hex'))
  })

  it('with a wrong password and with an unknown e-mail is refused alike', async () => {
    const { email } = service.alpha.people.stores
    const wrong = await supertest(service.app.server).post(session).send({ email, password: 'not this one' })
    const unknown = await supertest(service.app.server)
      .post(session)
      .send({ email: 'nobody@alpha.example', password: 'not this one' })
    expect([wrong.status, unknown.status]).toEqual([401, 401])
    expect(wrong.body).toEqual(unknown.body)
    expect(wrong.headers['set-cookie']).toBeUndefined()
  })

  it('ends on the server too when the person signs out', async () => {
    const { email, password } = service.alpha.people.stores
    const agent = supertest.agent(service.app.server)
    const reply = await agent.post(session).send({ email, password })
    const kept = String(reply.headers['set-cookie']).split(';')[0] as string
    expect((await agent.get(session)).status).toBe(200)
    expect((await agent.delete(session)).status).toBe(204)
    expect((await supertest(service.app.server).get(session).set('cookie', kept)).status).toBe(401)
  })

  it('is over for a person who is shut out, at once', async () => {
    const { id, email, password } = service.alpha.people.technician
    const agent = supertest.agent(service.app.server)
    await agent.post(session).send({ email, password })
    await service.owner.query('update person set disabled_at = now() where id = $1', [id])
    expect((await agent.get(session)).status).toBe(401)
    await service.owner.query('update person set disabled_at = null where id = $1', [id])
  })

  it('is refused after too many tries, with the right password too, and says when to try again', async () => {
    const { email, password } = service.alpha.people.stores
    const tries = await Promise.all(
      Array.from({ length: 10 }, () => supertest(service.app.server).post(session).send({ email, password: 'wrong' })),
    )
    expect(tries.some((reply) => reply.status === 429)).toBe(true)
    const reply = await supertest(service.app.server).post(session).send({ email, password })
    expect([reply.status, reply.body.code]).toEqual([429, 'too-many-requests'])
    expect(reply.body.detail).toMatch(/wait/)
    expect(reply.headers['retry-after']).toMatch(/^\d+$/)
    expect((await engineer.get('/areas')).status).toBe(200)
  })
})

describe('open to anyone', () => {
  it('health says that the process answers, ready that the database is migrated', async () => {
    expect((await supertest(service.app.server).get('/api/v1/health')).body).toEqual({ status: 'ok' })
    const ready = await supertest(service.app.server).get('/api/v1/ready')
    expect(ready.body).toMatchObject({ status: 'ok', database: 'ok' })
    expect(ready.body.migrations).toBeGreaterThanOrEqual(2)
  })

  it('ready is 503 while a migration is missing', async () => {
    await service.owner.query('update _prisma_migrations set finished_at = null where migration_name like $1', [
      '%isolation',
    ])
    const reply = await supertest(service.app.server).get('/api/v1/ready')
    await service.owner.query('update _prisma_migrations set finished_at = now()')
    expect([reply.status, reply.body.code]).toEqual([503, 'not-ready'])
    expect(reply.body.detail).toMatch(/isolation/)
  })

  it('the OpenAPI document is the one that is committed', async () => {
    const { default: committed } = await import('../../apps/api/openapi.json', { with: { type: 'json' } })
    const reply = await supertest(service.app.server).get('/api/v1/openapi.json').expect(200)
    const same = JSON.stringify(reply.body) === JSON.stringify(committed)
    expect(same, 'run `npm run openapi` and commit apps/api/openapi.json').toBe(true)
  })
})
