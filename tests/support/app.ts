import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { FastifyInstance } from 'fastify'
import { Client } from 'pg'
import supertest, { type Test } from 'supertest'
import { afterAll, beforeAll } from 'vitest'
import { buildApp } from '../../apps/api/src/app.ts'
import { Config } from '../../apps/api/src/config.ts'
import { seedSmallSite, type SmallSite } from '../../seeds/builders/small-site.ts'
import { useTestDatabase, type TestDatabase } from './database.ts'

export interface TestApp {
  readonly app: FastifyInstance
  readonly database: TestDatabase
  /** The owner of the tables, past the service: for what a test prepares and for what it looks up. */
  readonly owner: Client
  readonly alpha: SmallSite
  readonly beta: SmallSite
  /** Where its photos lie, unless the test says otherwise. */
  readonly photoFolder: string
  /** Puts the service's clock; it stands there. */
  setNow(now: Date): void
  signIn(person: Credentials, siteCode: string): Promise<SiteAgent>
}

interface Credentials {
  readonly email: string
  readonly password: string
}

/** Somebody who is signed in, at one site: paths are below `/api/v1/sites/<code>`. */
export interface SiteAgent {
  get(path: string): Test
  post(path: string, body?: object): Test
  delete(path: string): Test
  /** Sends the version as If-Match where it is given. */
  patch(path: string, body: object, version?: number): Test
  postIfMatch(path: string, body: object, version: number): Test
  /** Sends a file as the body. */
  postFile(path: string, file: Buffer, mediaType?: string): Test
}

/**
 * Gives the test file that calls it the service over a database of its own with two small sites, `alpha` and `beta`.
 * Nothing listens: supertest opens a port for each request.
 * @returns filled in when the tests run
 */
export function useTestApp(settings: Partial<Config> = {}): TestApp {
  const database = useTestDatabase()
  const service = {} as { -readonly [Key in keyof TestApp]: TestApp[Key] }
  beforeAll(async () => {
    const owner = new Client(database.ownerUrl)
    await owner.connect()
    let now: Date | undefined
    const photoFolder = await mkdtemp(join(tmpdir(), 'shaftbook-photos-'))
    const photoStore = { kind: 'folder', folder: photoFolder }
    const config = { poolSize: 4, signInTriesPerMinute: 10_000, log: 'silent', photoStore, ...settings }
    const app = await buildApp(Config.parse({ ...config, appUrl: database.appUrl }), () => now ?? new Date())
    await app.ready()
    Object.assign(service, {
      app,
      database,
      owner,
      photoFolder,
      alpha: await seedSmallSite(owner, { code: 'alpha' }),
      beta: await seedSmallSite(owner, { code: 'beta' }),
      setNow: (at: Date) => (now = at),
      signIn: (person: Credentials, siteCode: string) => signIn(app, person, siteCode),
    })
  })
  afterAll(async () => {
    await service.app?.close()
    await service.owner?.end()
    if (service.photoFolder) await rm(service.photoFolder, { recursive: true, force: true })
  })
  return service
}

async function signIn(app: FastifyInstance, { email, password }: Credentials, siteCode: string): Promise<SiteAgent> {
  const agent = supertest.agent(app.server)
  await agent.post('/api/v1/session').send({ email, password }).expect(200)
  const at = (path: string): string => `/api/v1/sites/${siteCode}${path}`
  const ifMatch = (request: Test, version: number): Test => request.set('if-match', `"${version}"`)
  return {
    get: (path) => agent.get(at(path)),
    post: (path, body) => agent.post(at(path)).send(body),
    delete: (path) => agent.delete(at(path)),
    patch: (path, body, version) => {
      const request = agent.patch(at(path))
      return (version === undefined ? request : ifMatch(request, version)).send(body)
    },
    postFile: (path, file, mediaType = 'image/jpeg') => agent.post(at(path)).set('content-type', mediaType).send(file),
    postIfMatch: (path, body, version) => ifMatch(agent.post(at(path)), version).send(body),
  }
}
