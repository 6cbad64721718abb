import { rule, type Column } from './blocks.ts'
import { a4, inks, mm, type Paper, type Style } from './paper.ts'
import { drawQr } from './qr-drawing.ts'
import { siteRulesFirst } from './words.ts'

/** The head of a paper: what it is, of what, and a block of cells as on a drawing. */
export interface Head {
  readonly kind: string
  readonly title: string
  readonly cells: readonly (readonly [label: string, value: string])[]
  /** The address that leads to it in the book. */
  readonly qr: string
}

const qrSide = 26 * mm

/** Draws the head at the top of a page; the whole of it on the first, one line on the others. Gives the y below it. */
export function printHead({ paper, x, width }: Column, head: Head, isFirst: boolean): number {
  const top = 13 * mm
  if (!isFirst) {
    paper.fit(`${head.kind}: ${head.title}`, x, top, width, { size: 10, face: 'semibold' })
    rule(paper, x, top + 17, width, 1)
    return top + 24
  }
  const inner = width - qrSide - 10
  paper.write(head.kind.toUpperCase(), x, top, inner, { size: 8.5, face: 'semibold', ink: 'accent' })
  const title = { size: 19, face: 'semibold', lineGap: -2 } as const
  const titleHeight = Math.min(2, paper.heightOf(head.title, inner, title) / 25) * 25
  if (paper.heightOf(head.title, inner, title) <= 52) paper.write(head.title, x, top + 11, inner, title)
  else paper.write(head.title, x, top + 12, inner, { ...title, size: 12 })
  drawQr(paper, head.qr, x + width - qrSide + 6, top - 8, qrSide)
  const cellsTop = Math.max(top + 16 + titleHeight, top + qrSide - 2)
  return printCells({ paper, x, width }, head.cells, cellsTop) + 8
}

const perRow = 4

/** The cells as on a drawing, ruled; a value that does not fit its cell on one line wraps and makes its row higher. */
function printCells({ paper, x, width }: Column, cells: Head['cells'], top: number): number {
  const cellWidth = width / perRow
  const { doc } = paper
  let y = top
  rule(paper, x, y, width, 1)
  for (let from = 0; from < cells.length; from += perRow) {
    const row = cells.slice(from, from + perRow)
    const styles = row.map(([, value]) => cellStyle(paper, value, cellWidth - 10))
    const height = 14 + Math.max(...row.map(([, value], at) => paper.heightOf(value, cellWidth - 10, styles[at])))
    row.forEach(([label, value], at) => {
      const left = x + at * cellWidth + (at === 0 ? 0 : 6)
      paper.write(label, left, y + 2.5, cellWidth - 10, { size: 7, ink: 'soft' })
      paper.write(value, left, y + 10.5, cellWidth - 10, styles[at])
      if (at === 0) return
      const line = x + at * cellWidth
      doc
        .save()
        .moveTo(line, y)
        .lineTo(line, y + height)
        .lineWidth(0.5)
        .stroke(inks.rule)
        .restore()
    })
    y += height
    rule(paper, x, y, width, from + perRow >= cells.length ? 1 : 0.5)
  }
  return y
}

function cellStyle(paper: Paper, value: string, width: number): Style {
  const usual = { size: 9.5, face: 'semibold' } as const
  return paper.widthOf(value, usual) <= width ? usual : { ...usual, size: 8, lineGap: -1 }
}

/** The foot of every page, once their number is known: what comes first, what it is, and which page. */
export function printFeet({ paper, x, width }: Column, what: string): void {
  const { start, count } = paper.doc.bufferedPageRange()
  const y = a4[1] - 17 * mm
  for (let page = 0; page < count; page += 1) {
    paper.doc.switchToPage(start + page)
    rule(paper, x, y, width, 1)
    paper.write(siteRulesFirst, x, y + 4, width, { size: 8 })
    paper.write(what, x, y + 16, width - 80, { size: 7.5, ink: 'soft' })
    paper.write(`page ${page + 1} of ${count}`, x + width - 80, y + 16, 80, { size: 7.5, ink: 'soft', align: 'right' })
  }
}

/** Says across the page that what stands on it is not signed. */
export function markDraft({ doc }: Paper): void {
  const [width, height] = a4
  doc.save().rotate(-52, { origin: [width / 2, height / 2] })
  doc.font('semibold').fontSize(150).fillColor(inks.faint, 0.6)
  doc.text('DRAFT', 0, height / 2 - 95, { width, align: 'center', lineBreak: false })
  doc.restore()
}
