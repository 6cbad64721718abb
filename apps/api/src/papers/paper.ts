import { fileURLToPath } from 'node:url'
// oxlint-disable-next-line import/no-named-as-default -- its types know the default only
import PDFDocument from 'pdfkit'

/** Points of the page in one millimetre. */
export const mm = 72 / 25.4

export const inks = {
  ink: '#1D2327',
  soft: '#575F66',
  rule: '#B7B1A3',
  faint: '#E4E0D6',
  window: '#D9E8DC',
  accent: '#14606B',
  inside: '#2F6A3D',
  under: '#8A5A00',
  over: '#9E2B25',
  'not-proven': '#4A5A8A',
} as const
export type Ink = keyof typeof inks

export type Face = 'regular' | 'semibold'
export interface Style {
  readonly size?: number
  readonly face?: Face
  readonly ink?: Ink
  readonly align?: 'left' | 'center' | 'right'
  readonly lineGap?: number
}

const fonts = {
  regular: fileURLToPath(new URL('fonts/SourceSans3-Regular.ttf', import.meta.url)),
  semibold: fileURLToPath(new URL('fonts/SourceSans3-Semibold.ttf', import.meta.url)),
} as const satisfies Record<Face, string>

/** A document under way: pdfkit's pages without its own breaking of pages, and text in the book's two faces. */
export interface Paper {
  readonly doc: PDFKit.PDFDocument
  /** Writes text that wraps inside `width`, its top left corner at x, y (points); gives the height that it took. */
  write(text: string, x: number, y: number, width: number, style?: Style): number
  /** Writes one line that is made smaller until it fits `width`, down to `smallest` points, and is then cut with an ellipsis. */
  fit(text: string, x: number, y: number, width: number, style?: Style & { smallest?: number }): void
  heightOf(text: string, width: number, style?: Style): number
  widthOf(text: string, style?: Style): number
  finish(): Promise<Uint8Array<ArrayBuffer>>
}

export interface PaperInfo {
  readonly title: string
  /** Page size in points: [width, height]. */
  readonly size: readonly [number, number]
  readonly madeAt: Date
}

export const a4 = [210 * mm, 297 * mm] as const

export function openPaper({ title, size, madeAt }: PaperInfo): Paper {
  const doc = new PDFDocument({
    size: [...size],
    margin: 0,
    bufferPages: true,
    autoFirstPage: false,
    lang: 'en',
    displayTitle: true,
    info: { Title: printable(title), Creator: 'Shaftbook', CreationDate: madeAt, ModDate: madeAt },
    // no first font: one that is opened before it is registered would be opened anew at every use
    font: '',
  })
  for (const [face, file] of Object.entries(fonts)) doc.registerFont(face, file)
  const bytes = collected(doc)

  const set = ({ size = 9, face = 'regular', ink = 'ink' }: Style): void => {
    doc.font(face).fontSize(size).fillColor(inks[ink])
  }
  const options = (width: number, { align = 'left', lineGap = 0 }: Style) => ({
    width,
    align,
    lineGap,
  })
  const heightOf: Paper['heightOf'] = (text, width, style = {}) => {
    set(style)
    return doc.heightOfString(printable(text), options(width, style))
  }
  const widthOf: Paper['widthOf'] = (text, style = {}) => {
    set(style)
    return doc.widthOfString(printable(text))
  }
  return {
    doc,
    heightOf,
    widthOf,
    write: (text, x, y, width, style = {}) => {
      const height = heightOf(text, width, style)
      doc.text(printable(text), x, y, options(width, style))
      return height
    },
    fit: (text, x, y, width, { smallest = 6, ...style } = {}) => {
      let size = style.size ?? 9
      while (size > smallest && widthOf(text, { ...style, size }) > width) size -= 0.25
      set({ ...style, size })
      const shown = printable(text)
      doc.text(shown, x, y, { ...options(width, style), height: size * 1.3, lineBreak: false, ellipsis: true })
    },
    finish: async () => {
      doc.end()
      return await bytes
    },
  }
}

/** Text with one kind of space and no control characters, composed as the font has its letters. */
function printable(text: string): string {
  return text
    .normalize('NFC')
    .replaceAll(/\r\n?/g, '\n')
    .replaceAll(/[\p{Cc}]/gu, (character) => (character === '\n' ? '\n' : ' '))
}

async function collected(doc: PDFKit.PDFDocument): Promise<Uint8Array<ArrayBuffer>> {
  const chunks: Buffer[] = []
  for await (const chunk of doc) chunks.push(chunk as Buffer)
  return new Uint8Array(Buffer.concat(chunks))
}
