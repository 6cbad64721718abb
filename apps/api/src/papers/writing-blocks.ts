import { rule, type Block, type Column } from './blocks.ts'
import { inks } from './paper.ts'

/** Fields to write in: each label stands small over a line, `perRow` of them side by side. */
export function writingLines({ paper, x, width }: Column, labels: readonly string[], perRow: number): Block[] {
  const fieldWidth = width / perRow
  const rows = Array.from({ length: Math.ceil(labels.length / perRow) }, (_, row) =>
    labels.slice(row * perRow, (row + 1) * perRow),
  )
  return rows.map((row) => ({
    height: 29,
    draw: (y) => {
      row.forEach((label, index) => {
        const left = x + index * fieldWidth
        paper.fit(label, left, y + 1, fieldWidth - 8, { size: 7.5, ink: 'soft' })
        rule(paper, left, y + 26, fieldWidth - 8, 0.8)
      })
    },
  }))
}

/** A table to write in: printed heads and row names, empty cells between rules. */
export function writingTable(
  { paper, x, width }: Column,
  heads: readonly string[],
  rows: readonly (readonly string[])[],
  shares: readonly number[] = heads.map(() => 1),
  rowHeight = 20,
): Block[] {
  const total = shares.reduce((sum, share) => sum + share, 0)
  const lefts = shares.map(
    (_, index) => x + (shares.slice(0, index).reduce((sum, share) => sum + share, 0) / total) * width,
  )
  const cellWidth = (index: number): number => (shares[index]! / total) * width
  const headHeight = 14
  const heightOf = (row: readonly string[]): number =>
    Math.max(rowHeight, ...row.map((cell, index) => paper.heightOf(cell, cellWidth(index) - 6, { size: 9 }) + 7))
  const uprights = (y: number, height: number): void => {
    const { doc } = paper
    for (const left of lefts.slice(1)) doc.moveTo(left, y).lineTo(left, y + height)
    doc.lineWidth(0.5).stroke(inks.rule)
  }
  const head: Block = {
    height: headHeight,
    draw: (y) => {
      heads.forEach((text, index) =>
        paper.fit(text, lefts[index]! + (index === 0 ? 0 : 4), y + 2, cellWidth(index) - 6, { size: 7.5, ink: 'soft' }),
      )
      uprights(y, headHeight)
      rule(paper, x, y + headHeight, width, 0.8)
    },
  }
  const lines = rows.map((row): Block => {
    const height = heightOf(row)
    return {
      height,
      draw: (y) => {
        row.forEach((text, index) =>
          paper.write(text, lefts[index]! + (index === 0 ? 0 : 4), y + 4, cellWidth(index) - 6, { size: 9 }),
        )
        uprights(y, height)
        rule(paper, x, y + height, width, 0.5)
      },
    }
  })
  return [head, ...lines]
}

/** Words with an empty square before each, to tick. */
export function ticks({ paper, x, width }: Column, label: string, words: readonly string[]): Block {
  const labelWidth = 92
  return {
    height: 18,
    draw: (y) => {
      paper.write(label, x, y + 3, labelWidth, { size: 8, ink: 'soft' })
      let left = x + labelWidth
      for (const word of words) {
        paper.doc
          .save()
          .rect(left, y + 4, 9, 9)
          .lineWidth(0.8)
          .stroke(inks.ink)
          .restore()
        paper.write(word, left + 13, y + 2.5, Math.max(20, x + width - left - 13), { size: 9 })
        left += 13 + paper.widthOf(word, { size: 9 }) + 16
      }
    },
  }
}
