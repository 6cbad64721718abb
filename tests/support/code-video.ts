import { writeFile } from 'node:fs/promises'

/** Red, green, blue and alpha of each pixel, row by row. */
type Picture = Pick<ImageData, 'width' | 'height' | 'data'>

/** One grey picture as a film that Chromium takes for its camera (YUV4MPEG2), standing still. */
export async function writeStill(file: string, picture: Picture): Promise<void> {
  const { width, height, data } = picture
  const luma = Buffer.alloc(width * height)
  for (let at = 0; at < luma.length; at += 1) luma[at] = data[at * 4 + 1] ?? 255
  const chroma = Buffer.alloc((width / 2) * (height / 2) * 2, 128)
  const header = Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420jpeg\n`)
  const frame = Buffer.concat([Buffer.from('FRAME\n'), luma, chroma])
  await writeFile(file, Buffer.concat([header, frame, frame]))
}

/** A picture in the middle of a white one of the given size. */
export function onWhite(picture: Picture, width: number, height: number): Picture {
  const data = new Uint8ClampedArray(width * height * 4).fill(255)
  const [left, top] = [Math.floor((width - picture.width) / 2), Math.floor((height - picture.height) / 2)]
  for (let row = 0; row < picture.height; row += 1) {
    const line = picture.data.subarray(row * picture.width * 4, (row + 1) * picture.width * 4)
    data.set(line, ((top + row) * width + left) * 4)
  }
  return { width, height, data }
}
