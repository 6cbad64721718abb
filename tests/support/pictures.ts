import { randomUUID } from 'node:crypto'
import { crc32, deflateSync } from 'node:zlib'
import sharp, { type Sharp } from 'sharp'
import type { SmallSite } from '../../seeds/builders/small-site.ts'

interface Look {
  readonly widthPx?: number
  readonly heightPx?: number
  readonly colour?: string
}

function plain({ widthPx = 640, heightPx = 480, colour = '#7a8b52' }: Look): Sharp {
  return sharp({ create: { width: widthPx, height: heightPx, channels: 3, background: colour } })
}

export function aJpeg(look: Look = {}): Promise<Buffer> {
  return plain(look).jpeg().toBuffer()
}

export function aPng(look: Look = {}): Promise<Buffer> {
  return plain(look).png().toBuffer()
}

export function aWebp(look: Look = {}): Promise<Buffer> {
  return plain(look).webp().toBuffer()
}

/**
 * As a phone writes it that is held upright: lying (640 × 480), to be turned by a quarter so that the red left half comes to
 * the top; with the place, the camera and a comment.
 */
export function aPhonePhoto(): Promise<Buffer> {
  const red = { create: { width: 320, height: 480, channels: 3 as const, background: '#ff0000' } }
  return plain({ colour: '#0000ff' })
    .composite([{ input: red, left: 0, top: 0 }])
    .withExif({
      IFD0: { Make: 'Maker of phones', ImageDescription: 'At home' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '53/1 33/1 0/1', GPSLongitudeRef: 'E', GPSLongitude: '9/1 59/1 0/1' },
    })
    .withXmp(
      '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"/></x:xmpmeta>',
    )
    .withMetadata({ orientation: 6 })
    .jpeg()
    .toBuffer()
}

/** A PNG that says how many pixels it has and holds as many: all black, so that it is small. */
export function aBomb(sidePx: number): Buffer {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(sidePx, 0)
  header.writeUInt32BE(sidePx, 4)
  header.set([1, 0, 0, 0, 0], 8)
  const rows = deflateSync(Buffer.alloc(sidePx * (Math.ceil(sidePx / 8) + 1)))
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  return Buffer.concat([signature, chunk('IHDR', header), chunk('IDAT', rows), chunk('IEND', Buffer.alloc(0))])
}

function chunk(name: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data])
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)]
  length.writeUInt32BE(data.length)
  check.writeUInt32BE(crc32(named))
  return Buffer.concat([length, named, check])
}

/** Where a photo is sent, with what is told of it: of the locating position itself unless said otherwise. */
export function photoPath(site: SmallSite, over: Record<string, string> = {}): string {
  const positionId = site.locating.id
  const told = {
    id: randomUUID(),
    positionId,
    subjectKind: 'position',
    subjectId: positionId,
    takenAt: site.meterRead.at.toISOString(),
  }
  return `/photos?${new URLSearchParams({ ...told, ...over })}`
}
