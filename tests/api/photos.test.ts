import { randomUUID } from 'node:crypto'
import { Photo } from '@shaftbook/contract/photos'
import sharp from 'sharp'
import supertest from 'supertest'
import { beforeAll, describe, expect, it } from 'vitest'
import { useTestApp, type SiteAgent } from '../support/app.ts'
import { aBomb, aJpeg, aPhonePhoto, aPng, aWebp, photoPath } from '../support/pictures.ts'
import { aMount, aSpot, day, expectNothingWritten, expectRefused } from './shaft-work.ts'

const service = useTestApp({ photoMaxBytes: 3_000_000 })
let technician: SiteAgent
let siteId: string
beforeAll(async () => {
  technician = await service.signIn(service.alpha.people.technician, 'alpha')
  siteId = service.alpha.siteId
})

async function add(file: Buffer, over: Record<string, string> = {}, mediaType?: string): Promise<Photo> {
  const reply = await technician.postFile(photoPath(service.alpha, over), file, mediaType).expect(201)
  return Photo.parse(reply.body)
}

/** The stored bytes of a picture. */
async function picture(id: string, size = 'full'): Promise<Buffer> {
  const reply = await technician.get(`/photos/${id}/image?size=${size}`).buffer(true).parse(binary).expect(200)
  return reply.body as Buffer
}

function binary(reply: supertest.Response, done: (error: Error | null, body: Buffer) => void): void {
  const parts: Buffer[] = []
  const stream = reply as unknown as NodeJS.ReadableStream
  stream.on('data', (part: Buffer) => parts.push(part))
  stream.on('end', () => done(null, Buffer.concat(parts)))
}

describe('a photo that is added', () => {
  it('is listed with its position and with its record, newest first, with who added it', async () => {
    const { positionId, tag } = await aSpot(service)
    const subjectId = randomUUID()
    const of = { positionId, subjectKind: 'mount', subjectId }
    const at = (days: number): string => new Date(service.alpha.meterRead.at.getTime() + days * day).toISOString()
    const older = await add(await aJpeg(), { ...of, step: 'drive-up', caption: 'Nut side', takenAt: at(1) })
    const newer = await add(await aJpeg({ colour: '#333333' }), { ...of, takenAt: at(2) })
    const other = await add(await aJpeg(), { positionId, subjectKind: 'position', subjectId: positionId })
    expect(older).toMatchObject({ ...of, tag, step: 'drive-up', caption: 'Nut side', takenAt: at(1) })
    expect(older).toMatchObject({ addedBy: service.alpha.people.technician.name, withdrawnAt: null })
    const ofRecord = await technician.get(`/photos?subjectId=${subjectId}`).expect(200)
    expect(ofRecord.body.items).toEqual([newer, older])
    const ofPosition = await technician.get(`/photos?positionId=${positionId}`).expect(200)
    expect(ofPosition.body.items).toEqual([newer, older, other])
    expect((await technician.get(`/photos/${older.id}`).expect(200)).body).toEqual(older)
  })

  it('keeps nothing of where and with what it was taken, and stands upright', async () => {
    const sent = await aPhonePhoto()
    const before = await sharp(sent).metadata()
    expect(before).toMatchObject({ orientation: 6, exif: expect.any(Buffer), xmp: expect.any(Buffer) })
    expect(sent.includes('Maker of phones')).toBe(true)
    const photo = await add(sent)
    for (const size of ['full', 'small']) {
      const stored = await picture(photo.id, size)
      const { exif, xmp, iptc, icc, orientation } = await sharp(stored).metadata()
      expect({ exif, xmp, iptc, icc, orientation }).toEqual({})
      expect(stored.includes('Exif') || stored.includes('GPS') || stored.includes('Maker of phones')).toBe(false)
    }
    expect([photo.widthPx, photo.heightPx]).toEqual([480, 640])
    const top = { left: 0, top: 0, width: 480, height: 300 }
    const cut = await sharp(await picture(photo.id))
      .extract(top)
      .toBuffer()
    expect((await sharp(cut).stats()).dominant).toMatchObject({ r: expect.closeTo(248, -1), b: expect.closeTo(8, -1) })
  })

  it.each([
    ['JPEG', aJpeg, 'image/jpeg'],
    ['PNG', aPng, 'image/png'],
    ['WebP', aWebp, 'image/webp'],
    ['PNG called JPEG', aPng, 'image/jpeg'],
  ])('as %s is stored as JPEG of the same picture', async (_, make, mediaType) => {
    const photo = await add(await make({ colour: '#c04020' }), {}, mediaType)
    const stored = sharp(await picture(photo.id))
    expect(await stored.metadata()).toMatchObject({ format: 'jpeg', width: 640, height: 480, space: 'srgb' })
    const { channels } = await stored.stats()
    const wanted = [0xc0, 0x40, 0x20]
    expect(channels.map(({ mean }, at) => Math.abs(mean - (wanted[at] as number)) < 3)).toEqual([true, true, true])
  })

  it('is at most 2,560 px a side, its preview 480 px; a small one is not blown up', async () => {
    const large = await add(await aJpeg({ widthPx: 6000, heightPx: 3000 }))
    expect(large).toMatchObject({ widthPx: 2560, heightPx: 1280 })
    expect(await sharp(await picture(large.id, 'small')).metadata()).toMatchObject({ width: 480, height: 240 })
    const small = await add(await aJpeg({ widthPx: 100, heightPx: 80 }))
    expect(await sharp(await picture(small.id, 'small')).metadata()).toMatchObject({ width: 100, height: 80 })
  })

  it('is called by its position and day, is asked for again each time, and can do nothing as a page', async () => {
    const photo = await add(await aJpeg({ colour: '#101010' }))
    const reply = await technician.get(`/photos/${photo.id}/image`).expect(200)
    const day = photo.takenAt.slice(0, 10)
    expect(reply.headers).toMatchObject({
      'content-type': 'image/jpeg',
      'cache-control': 'private, no-cache',
      'x-content-type-options': 'nosniff',
      'content-security-policy': "default-src 'none'; sandbox",
      etag: `"${photo.sha256}"`,
    })
    expect(reply.headers['content-disposition']).toContain(`inline; filename="${photo.tag} ${day} `)
    const again = technician.get(`/photos/${photo.id}/image`).set('if-none-match', `"${photo.sha256}"`)
    expect((await again.expect(304)).text).toBe('')
  })
})

describe('a photo of a camera whose clock runs ahead', () => {
  it('was taken when it was added', async () => {
    const photo = await add(await aJpeg(), { takenAt: new Date(Date.now() + day).toISOString() })
    expect(photo.takenAt).toBe(photo.addedAt)
  })
})

describe('the same photo again', () => {
  it('is answered with the first one, also at the same time', async () => {
    const file = await aJpeg({ colour: '#222222' })
    const path = photoPath(service.alpha)
    const replies = await Promise.all([technician.postFile(path, file), technician.postFile(path, file)])
    expect(replies.map((reply) => reply.status)).toEqual([201, 201])
    expect(replies[1]?.body).toEqual(replies[0]?.body)
    await expectNothingWritten(service.owner, siteId, async () => {
      expect((await technician.postFile(path, file).expect(201)).body).toEqual(replies[0]?.body)
    })
  })

  it('with other bytes, or with other words, is refused: the first one stays', async () => {
    const id = randomUUID()
    const first = await add(await aJpeg({ colour: '#444444' }), { id })
    await expectNothingWritten(service.owner, siteId, async () => {
      const others: [Buffer, Record<string, string>][] = [
        [await aJpeg({ colour: '#555555' }), {}],
        [await aJpeg({ colour: '#444444' }), { caption: 'Other words' }],
      ]
      for (const [file, over] of others) {
        const path = photoPath(service.alpha, { id, ...over })
        await expectRefused(technician.postFile(path, file), 409, 'id-already-used', 'id')
      }
    })
    expect((await technician.get(`/photos/${id}`)).body).toEqual(first)
  })
})

describe('a photo is refused, and nothing of it is written,', () => {
  async function expectPhotoRefused(file: Buffer, status: number, code: string, over = {}, mediaType?: string) {
    const detail: string[] = []
    await expectNothingWritten(service.owner, siteId, async () => {
      const reply = await technician.postFile(photoPath(service.alpha, over), file, mediaType)
      expect([reply.status, reply.body.code]).toEqual([status, code])
      detail.push(reply.body.detail as string)
    })
    return detail[0]
  }

  const html = Buffer.from('<!doctype html><script>alert(1)</script>')
  const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>')

  it.each([
    ['a page called .jpg', html],
    ['a drawing with scripts in it', svg],
    ['a GIF', Buffer.from('GIF89a\x01\x00\x01\x00\x80\x00\x00', 'latin1')],
    ['no picture at all', Buffer.alloc(400, 7)],
  ])('where it is %s', async (_, file) => {
    expect(await expectPhotoRefused(file, 415, 'media-type-not-supported')).toMatch(/no JPEG, PNG or WebP picture/)
  })

  it.each([
    ['a JPEG', aJpeg],
    ['a PNG', aPng],
    ['a WebP', aWebp],
  ])('where it is %s that ends too early', async (_, make) => {
    const whole = await make({ widthPx: 900, heightPx: 700 })
    for (const share of [0.02, 0.5, 0.9]) {
      const cut = whole.subarray(0, Math.max(16, Math.floor(whole.length * share)))
      expect(await expectPhotoRefused(cut, 422, 'picture-unreadable')).toMatch(/take or choose it again/)
    }
  })

  it('where it unpacks to more pixels than are taken', async () => {
    expect(await expectPhotoRefused(aBomb(16_000), 422, 'picture-unreadable', {}, 'image/png')).toContain(
      '16000 × 16000 pixels; at most 64 megapixels',
    )
  })

  it('where it is larger than the setting, or of a type that is not taken, or missing', async () => {
    expect(await expectPhotoRefused(Buffer.alloc(3_000_001, 1), 413, 'body-too-large')).toContain('3 MB')
    expect(await expectPhotoRefused(svg, 415, 'media-type-not-supported', {}, 'image/svg+xml')).toContain('image/webp')
    expect(await expectPhotoRefused(html, 415, 'media-type-not-supported', {}, 'application/json')).toContain('image/')
    await expectPhotoRefused(Buffer.alloc(0), 400, 'request-invalid')
  })

  it('where what is told of it does not fit', async () => {
    const file = await aJpeg()
    const refused = async (over: Record<string, string>, status: number, code: string, path: string): Promise<void> => {
      await expectNothingWritten(service.owner, siteId, async () => {
        await expectRefused(technician.postFile(photoPath(service.alpha, over), file), status, code, path)
      })
    }
    await refused({ positionId: randomUUID() }, 404, 'not-found', 'positionId')
    await refused({ positionId: service.beta.locating.id }, 404, 'not-found', 'positionId')
    await refused({ subjectId: randomUUID() }, 422, 'not-allowed-here', 'subjectId')
    await refused({ takenAt: 'yesterday' }, 400, 'request-invalid', 'takenAt')
    await refused({ subjectKind: 'lunch' }, 400, 'request-invalid', 'subjectKind')
    await refused({ id: '17' }, 400, 'request-invalid', 'id')
  })

  it('where its record is of another position', async () => {
    const record = aMount(service.alpha, { sign: false })
    await technician.post('/mount-records', record).expect(201)
    const [file, { positionId }] = [await aJpeg(), await aSpot(service)]
    const ofRecord = { subjectKind: 'mount', subjectId: record.id }
    await expectNothingWritten(service.owner, siteId, async () => {
      const request = technician.postFile(photoPath(service.alpha, { ...ofRecord, positionId }), file)
      await expectRefused(request, 422, 'not-allowed-here', 'subjectId')
    })
    const right = photoPath(service.alpha, { ...ofRecord, positionId: record.positionId })
    await technician.postFile(right, file).expect(201)
  })
})
