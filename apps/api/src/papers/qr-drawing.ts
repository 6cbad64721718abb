import bwip from 'bwip-js/node'
import type { Paper } from './paper.ts'

/** Modules of white that a reader needs round a QR code (ISO/IEC 18004). */
export const quietModules = 4

/** The modules of a QR code with error correction M, row by row; true is dark. */
export function qrModules(text: string): {
  readonly side: number
  readonly isDark: (row: number, column: number) => boolean
} {
  // oxlint-disable-next-line import/no-named-as-default-member -- the export of that name draws another symbol
  const [symbol] = bwip.raw('qrcode', text, 'eclevel=M')
  if (!symbol || !('pixs' in symbol)) throw new TypeError('a QR code is made of squares')
  const { pixs, pixx } = symbol
  return { side: pixx, isDark: (row, column) => pixs[row * pixx + column] === 1 }
}

/** Draws a QR code with its quiet zone into a square of `sidePt` points. */
export function drawQr({ doc }: Paper, text: string, x: number, y: number, sidePt: number): void {
  const { side, isDark } = qrModules(text)
  const module = sidePt / (side + 2 * quietModules)
  doc.save().rect(x, y, sidePt, sidePt).fill('#FFFFFF')
  for (let row = 0; row < side; row += 1) {
    for (const { from, length } of darkRuns(side, (column) => isDark(row, column))) {
      doc.rect(x + (quietModules + from) * module, y + (quietModules + row) * module, length * module, module)
    }
  }
  doc.fill('#000000').restore()
}

/** Neighbouring dark modules as one bar, so that no hairline shows between them. */
function darkRuns(side: number, isDark: (column: number) => boolean): { from: number; length: number }[] {
  const runs: { from: number; length: number }[] = []
  for (let column = 0; column < side; column += 1) {
    const last = runs.at(-1)
    if (!isDark(column)) continue
    if (last && last.from + last.length === column) last.length += 1
    else runs.push({ from: column, length: 1 })
  }
  return runs
}
