import { createCanvas } from '@napi-rs/canvas'
import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { getDocument, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'

/** A PDF as another program reads it. */
export interface Printed {
  readonly pages: number
  /** The text of each page, its pieces with single spaces between them. */
  readonly texts: readonly string[]
  /** Width and height of the first page in mm. */
  readonly sizeMm: readonly [number, number]
  /** Draws a page (from 1) at so many dots an inch. */
  picture(page: number, dpi: number): Promise<ImageData>
}

export async function readPrinted(bytes: Uint8Array): Promise<Printed> {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise
  const texts = await Promise.all(Array.from({ length: document.numPages }, (_, index) => textOf(document, index + 1)))
  const { width, height } = (await document.getPage(1)).getViewport({ scale: 25.4 / 72 })
  return {
    pages: document.numPages,
    texts,
    sizeMm: [width, height],
    picture: (page, dpi) => pictureOf(document, page, dpi),
  }
}

async function textOf(document: PDFDocumentProxy, page: number): Promise<string> {
  const { items } = await (await document.getPage(page)).getTextContent()
  return (
    items
      .map((item) => ('str' in item ? item.str : ''))
      .join(' ')
      .replaceAll(/\s+/g, ' ')
      // micro sign and mu are one glyph of the font
      .replaceAll('\u03BC', '\u00B5')
  )
}

async function pictureOf(document: PDFDocumentProxy, number: number, dpi: number): Promise<ImageData> {
  const page = await document.getPage(number)
  const viewport = page.getViewport({ scale: dpi / 72 })
  const canvas = createCanvas(Math.ceil(viewport.width), Math.ceil(viewport.height))
  await page.render({ canvas: canvas as unknown as HTMLCanvasElement, viewport, background: '#FFFFFF' }).promise
  const { width, height } = canvas
  return canvas.getContext('2d').getImageData(0, 0, width, height) as unknown as ImageData
}

const wasm = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm')
let isPrepared = false

/** What every code in a picture says, from top to bottom and left to right. */
export async function codesIn(picture: ImageData): Promise<string[]> {
  if (!isPrepared) {
    const bytes = await readFile(wasm)
    prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(bytes).buffer } })
    isPrepared = true
  }
  const found = await readBarcodes(picture, {
    formats: ['QRCode', 'DataMatrix'],
    tryHarder: true,
    maxNumberOfSymbols: 255,
  })
  return found
    .toSorted((a, b) => a.position.topLeft.y - b.position.topLeft.y || a.position.topLeft.x - b.position.topLeft.x)
    .map(({ text }) => text)
}
