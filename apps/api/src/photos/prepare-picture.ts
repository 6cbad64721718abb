import { createHash } from 'node:crypto'
import sharp from 'sharp'
import { DomainError } from '../domain-error.ts'
import { kindOfPicture } from './kind-of-picture.ts'

const fullSidePx = 2560
const smallSidePx = 480
/** Beyond this, no camera made it: a strip of a pixel's height can hold a bomb too. */
const longestSidePx = 20_000
const withinSeconds = 20

export interface Picture {
  readonly bytes: Buffer
  readonly sha256: string
  readonly widthPx: number
  readonly heightPx: number
}

export interface PreparedPhoto {
  readonly full: Picture
  readonly small: Picture
}

/**
 * Decodes what was sent and draws it anew as JPEG: upright, at most 2,560 px (the preview 480 px), with none of the metadata
 * that it came with. What a file is, its bytes say; its name and type are not asked.
 * @throws DomainError media-type-not-supported for what is no JPEG, PNG or WebP; picture-unreadable for one that is broken or
 * too large
 */
export async function preparePicture(sent: Buffer, maxPixels: number): Promise<PreparedPhoto> {
  if (kindOfPicture(sent) === undefined) {
    const sentence = 'The file is no JPEG, PNG or WebP picture, whatever its name says: choose a photo.'
    throw new DomainError('media-type-not-supported', sentence)
  }
  try {
    await checkSides(sent, maxPixels)
    const full = await redrawn(sent, fullSidePx, maxPixels)
    return { full, small: await redrawn(full.bytes, smallSidePx, maxPixels) }
  } catch (error) {
    if (error instanceof DomainError) throw error
    const sentence = 'The picture is broken or not complete: take or choose it again.'
    throw new DomainError('picture-unreadable', sentence, [], { cause: error })
  }
}

async function checkSides(sent: Buffer, maxPixels: number): Promise<void> {
  // the file's own head is asked, nothing is decoded yet
  const { width, height } = await sharp(sent, { limitInputPixels: false }).metadata()
  if (width * height <= maxPixels && Math.max(width, height) <= longestSidePx) return
  const most = `${Math.floor(maxPixels / 1_000_000)} megapixels and ${longestSidePx} pixels a side`
  const sentence = `The picture has ${width} × ${height} pixels; at most ${most} are taken: send a smaller one.`
  throw new DomainError('picture-unreadable', sentence)
}

async function redrawn(source: Buffer, sidePx: number, maxPixels: number): Promise<Picture> {
  const { data, info } = await sharp(source, { limitInputPixels: maxPixels, failOn: 'error', autoOrient: true })
    .timeout({ seconds: withinSeconds })
    .resize({ width: sidePx, height: sidePx, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .jpeg({ quality: 84 })
    .toBuffer({ resolveWithObject: true })
  const sha256 = createHash('sha256').update(data).digest('hex')
  return { bytes: data, sha256, widthPx: info.width, heightPx: info.height }
}
