import { fitWithin } from './fit-within.ts'

const longestSidePx = 1600
const jpegQuality = 0.8

/** The browser can't read the file as a picture; the sentence says what to do. */
export class PhotoUnreadableError extends Error {
  override readonly name = 'PhotoUnreadableError'
  constructor(fileName: string, cause: unknown) {
    super(`${fileName} can't be read as a picture here: take it with the camera, or choose a JPEG, PNG or WebP.`, {
      cause,
    })
  }
}

/**
 * Draws a photo anew as JPEG, upright and at most 1,600 px a side: small enough for a weak network, and without the place
 * and the device that the camera wrote into it. @throws PhotoUnreadableError
 */
export async function shrinkPhoto(file: File): Promise<Blob> {
  try {
    const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' })
    try {
      return await drawn(bitmap)
    } finally {
      bitmap.close()
    }
  } catch (error) {
    throw new PhotoUnreadableError(file.name, error)
  }
}

async function drawn(bitmap: ImageBitmap): Promise<Blob> {
  const { widthPx, heightPx } = fitWithin(bitmap.width, bitmap.height, longestSidePx)
  const canvas = document.createElement('canvas')
  canvas.width = widthPx
  canvas.height = heightPx
  const context = canvas.getContext('2d', { alpha: false })
  if (!context) throw new Error('The browser draws no pictures.')
  context.imageSmoothingQuality = 'high'
  context.fillStyle = '#ffffff'
  context.fillRect(0, 0, widthPx, heightPx)
  context.drawImage(bitmap, 0, 0, widthPx, heightPx)
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', jpegQuality))
  // a canvas holds its memory until it is collected, which a phone does late
  canvas.width = 0
  if (!blob) throw new Error('The picture could not be made smaller.')
  return blob
}
