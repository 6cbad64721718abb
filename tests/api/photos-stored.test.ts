import { mkdtemp, readdir, readFile, rm, truncate, utimes, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createHash } from 'node:crypto'
import type { FastifyInstance } from 'fastify'
import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { buildApp } from '../../apps/api/src/app.ts'
import { Config } from '../../apps/api/src/config.ts'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { bucketKeys, openBucketServer, type BucketServer } from '../support/bucket-server.ts'
import { aJpeg, photoPath } from '../support/pictures.ts'
import { expectNothingWritten } from './shaft-work.ts'

const service = useTestApp()
let technician: SiteAgent
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
})

async function filesBelow(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true })
  return entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name))
}

/** A bearing has many faces: every picture of a test is another. */
let shade = 0
const aNewJpeg = (): Promise<Buffer> => aJpeg({ colour: `#4020${(++shade).toString(16).padStart(2, '0')}` })

const cut = `
  create function break_here() returns trigger language plpgsql as $$ begin raise exception 'broken on purpose'; end $$;
  create trigger zz_break_here before insert on photo for each row execute function break_here()`

describe('in the folder of photos', () => {
  it('bytes lie below their site by their hash, whole, and nothing unfinished stays', async () => {
    const { body } = await technician.postFile(photoPath(service.alpha), await aNewJpeg()).expect(201)
    const files = await filesBelow(service.photoFolder)
    const wanted = join(service.photoFolder, service.alpha.siteId, body.sha256.slice(0, 2), body.sha256.slice(2))
    expect(files).toContain(wanted)
    const stored = await readFile(wanted)
    expect(createHash('sha256').update(stored).digest('hex')).toBe(body.sha256)
    expect(stored.length).toBe(body.sizeBytes)
    expect(files.filter((file) => file.includes('unfinished'))).toEqual([])
  })

  it('bytes come before the row: cut off between them, the same request makes it whole', async () => {
    const [path, file] = [photoPath(service.alpha), await aNewJpeg()]
    const before = (await filesBelow(service.photoFolder)).length
    await service.owner.query(cut)
    try {
      await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
        expect((await technician.postFile(path, file)).status).toBe(500)
      })
    } finally {
      await service.owner.query('drop function break_here() cascade')
    }
    expect((await filesBelow(service.photoFolder)).length).toBe(before + 2)
    const { body } = await technician.postFile(path, file).expect(201)
    await technician.get(`/photos/${body.id}/image`).expect(200)
    expect((await filesBelow(service.photoFolder)).length).toBe(before + 2)
  })

  it('a picture that is damaged or lost is never given out as if it were whole', async () => {
    const { body } = await technician.postFile(photoPath(service.alpha), await aNewJpeg()).expect(201)
    const file = join(service.photoFolder, service.alpha.siteId, body.sha256.slice(0, 2), body.sha256.slice(2))
    await truncate(file, 200)
    const damaged = await technician.get(`/photos/${body.id}/image`)
    expect([damaged.status, damaged.body.code]).toEqual([503, 'storage-not-ready'])
    await rm(file)
    const lost = await technician.get(`/photos/${body.id}/image`)
    expect([lost.status, lost.body.detail]).toEqual([503, expect.stringContaining('missing or damaged')])
  })
})

/** The service over the same database, with another store of photos. */
async function agentOf(app: FastifyInstance) {
  const { email, password } = service.alpha.people.technician
  const agent = supertest.agent(app.server)
  await agent.post('/api/v1/session').send({ email, password }).expect(200)
  const at = (path: string): string => `/api/v1/sites/alpha${path}`
  return {
    add: (path: string, file: Buffer) => agent.post(at(path)).set('content-type', 'image/jpeg').send(file),
    image: (id: string) => agent.get(at(`/photos/${id}/image`)),
  }
}

async function openApp(photoStore: object): Promise<FastifyInstance> {
  const app = await buildApp(Config.parse({ appUrl: service.database.appUrl, log: 'silent', poolSize: 2, photoStore }))
  await app.ready()
  return app
}

describe('where the folder cannot be written', () => {
  it('the photo is refused with 503, nothing of it is written, and the same request later makes it', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'shaftbook-photos-'))
    const inTheWay = join(folder, 'photos')
    await writeFile(inTheWay, 'a file where the folder should be')
    const app = await openApp({ kind: 'folder', folder: inTheWay })
    try {
      const { add } = await agentOf(app)
      const [path, file] = [photoPath(service.alpha), await aNewJpeg()]
      await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
        const refused = await add(path, file)
        expect([refused.status, refused.body.code]).toEqual([503, 'storage-not-ready'])
        expect(refused.body.detail).toContain('The photo was not saved')
      })
      await rm(inTheWay)
      await add(path, file).expect(201)
    } finally {
      await app.close()
      await rm(folder, { recursive: true })
    }
  })

  it('what a killed service left unfinished is taken away by the next one', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'shaftbook-photos-'))
    const app = await openApp({ kind: 'folder', folder })
    try {
      const { add } = await agentOf(app)
      await add(photoPath(service.alpha), await aNewJpeg()).expect(201)
      const left = join(folder, 'unfinished', 'left')
      await writeFile(left, 'half a picture')
      const longAgo = new Date(Date.now() - 86_400_000)
      await utimes(left, longAgo, longAgo)
      const next = await openApp({ kind: 'folder', folder })
      await (await agentOf(next)).add(photoPath(service.alpha), await aNewJpeg()).expect(201)
      await next.close()
      expect(await readdir(join(folder, 'unfinished'))).toEqual([])
    } finally {
      await app.close()
      await rm(folder, { recursive: true })
    }
  })
})

describe('in a bucket', () => {
  let bucket: BucketServer
  let app: FastifyInstance
  beforeAll(async () => {
    bucket = await openBucketServer('photos-of-the-book')
    app = await openApp({ kind: 'bucket', endpoint: bucket.endpoint, ...bucketKeys })
  })
  afterAll(async () => {
    await app.close()
    await bucket.close()
  })

  it('bytes are put under their site and hash, signed, and read from there', async () => {
    const { add, image } = await agentOf(app)
    const { body } = await add(photoPath(service.alpha), await aNewJpeg()).expect(201)
    const key = `${service.alpha.siteId}/${body.sha256.slice(0, 2)}/${body.sha256.slice(2)}`
    const stored = bucket.objects.get(key) as Buffer
    expect(createHash('sha256').update(stored).digest('hex')).toBe(body.sha256)
    expect(bucket.objects.size).toBe(2)
    const read = await image(body.id).expect(200)
    expect(read.body).toEqual(stored)
  })

  it.each([[503], [403], ['silent' as const]])(
    'a store that answers %s is told of with 503; nothing is written',
    async (fail) => {
      const { add, image } = await agentOf(app)
      const [path, file] = [photoPath(service.alpha), await aNewJpeg()]
      const { body } = await add(photoPath(service.alpha), await aNewJpeg()).expect(201)
      bucket.fail = fail
      await expectNothingWritten(service.owner, service.alpha.siteId, async () => {
        const refused = await add(path, file)
        expect([refused.status, refused.body.code]).toEqual([503, 'storage-not-ready'])
        expect(refused.body.detail).toContain('does not answer. The photo was not saved')
      })
      expect((await image(body.id)).status).toBe(503)
      bucket.fail = undefined
      await add(path, file).expect(201)
      await image(body.id).expect(200)
    },
  )

  it('a key that the store does not know is refused by it, and so is the photo', async () => {
    const wrong = await openApp({
      kind: 'bucket',
      endpoint: bucket.endpoint,
      ...bucketKeys,
      secretAccessKey: 'another',
    })
    try {
      const refused = await (await agentOf(wrong)).add(photoPath(service.alpha), await aNewJpeg())
      expect([refused.status, refused.body.code]).toEqual([503, 'storage-not-ready'])
    } finally {
      await wrong.close()
    }
  })
})
