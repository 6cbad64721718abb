import { expect, it } from 'vitest'
import { kindOfPicture } from './kind-of-picture.ts'

const latin = (text: string): Buffer => Buffer.from(text, 'latin1')

it.each([
  ['jpeg', latin('\xff\xd8\xff\xe1\x00\x10Exif')],
  ['png', latin('\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR')],
  ['webp', latin('RIFF\x24\x00\x00\x00WEBPVP8 ')],
])('knows a %s by its first bytes', (kind, bytes) => {
  expect(kindOfPicture(bytes)).toBe(kind)
})

it.each([
  ['nothing', latin('')],
  ['a single byte', latin('\xff')],
  ['a sound in the same container as WebP', latin('RIFF\x24\x00\x00\x00WAVEfmt ')],
  ['a page', latin('<!doctype html>')],
  ['a PNG whose line ends were changed on the way', latin('\x89PNG\n\x1a\n\x00')],
  ['a JPEG behind a page', latin('<html>\xff\xd8\xff')],
])('knows %s as no picture', (_, bytes) => {
  expect(kindOfPicture(bytes)).toBeUndefined()
})
