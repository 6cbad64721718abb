import { inks, type Paper, type Style } from './paper.ts'

/** A piece of a page whose height is known before it is drawn. All lengths in points. */
export interface Block {
  readonly height: number
  draw(y: number): void
}

export interface Column {
  readonly paper: Paper
  readonly x: number
  readonly width: number
}

/** The left and the right part of a column with a gutter between. */
export function halves({ paper, x, width }: Column, share: number): [Column, Column] {
  const gutter = 16
  const left = (width - gutter) * share
  return [
    { paper, x, width: left },
    { paper, x: x + left + gutter, width: width - gutter - left },
  ]
}

export function space(height: number): Block {
  return { height, draw: () => {} }
}

/** How tall, in points, one text may be: a block never outgrows its page. */
export const tallest = { text: 480, cell: 160 }
const lettersOfCell = 600

/** The text; one that would be taller than `most` points goes on one line after the other and is cut with an ellipsis. */
export function within(paper: Paper, text: string, width: number, style: Style, most: number): string {
  if (paper.heightOf(text, width, style) <= most) return text
  const run = text.replaceAll(/\s+/g, ' ')
  if (paper.heightOf(run, width, style) <= most) return run
  // no letter is wider than its size
  const { size = 9 } = style
  const letters = Math.floor(most / (size * 1.4)) * Math.floor(width / size)
  return `${run.slice(0, letters).trimEnd()} …`
}

export function paragraph({ paper, x, width }: Column, told: string, style: Style = {}): Block {
  const text = within(paper, told, width, style, tallest.text)
  return {
    height: paper.heightOf(text, width, style) + 2,
    draw: (y) => void paper.write(text, x, y, width, style),
  }
}

/** The title of a part of the page, over a rule. */
export function partTitle({ paper, x, width }: Column, text: string): Block {
  return {
    height: 21,
    draw: (y) => {
      paper.write(text, x, y + 2, width, { face: 'semibold', size: 10, ink: 'accent' })
      rule(paper, x, y + 16.5, width)
    },
  }
}

export interface Fact {
  readonly label: string
  readonly value: string | null | undefined
}

/** Label and value side by side, one line of the list each; facts without a value are left out. */
export function factList({ paper, x, width }: Column, list: readonly Fact[], labelWidth = 84): Block[] {
  const style: Style = { size: 9 }
  return list
    .filter(({ value }) => value !== null && value !== undefined && value !== '')
    .map(({ label, value }) => {
      const valueWidth = width - labelWidth
      const text = within(paper, value ?? '', valueWidth, style, tallest.text)
      const height = Math.max(
        paper.heightOf(text, valueWidth, style),
        paper.heightOf(label, labelWidth - 8, { size: 8 }),
      )
      return {
        height: height + 1.6,
        draw: (y) => {
          paper.write(label, x, y + 0.8, labelWidth - 8, { size: 8, ink: 'soft' })
          paper.write(text, x + labelWidth, y, valueWidth, style)
        },
      }
    })
}

export interface TableColumn {
  readonly head: string
  /** Share of the width. */
  readonly share: number
  readonly align?: 'left' | 'right'
}

/** Head and rows of a table, one block a row, so that a page may break between rows. */
export function table(
  { paper, x, width }: Column,
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
): Block[] {
  const shares = columns.reduce((sum, { share }) => sum + share, 0)
  const widths = columns.map(({ share }) => (share / shares) * width)
  const gap = 5
  const line = (told: readonly string[], style: Style, under: boolean): Block => {
    const cells = told.map((cell, index) => {
      const text = cell.slice(0, lettersOfCell)
      return within(paper, text, widths[index]! - gap, style, tallest.cell)
    })
    const heights = cells.map((cell, index) => paper.heightOf(cell, widths[index]! - gap, style))
    const height = Math.max(...heights) + 4
    return {
      height,
      draw: (y) => {
        let left = x
        cells.forEach((cell, index) => {
          paper.write(cell, left, y + 2, widths[index]! - gap, { ...style, align: columns[index]!.align ?? 'left' })
          left += widths[index]!
        })
        if (under) rule(paper, x, y + height, width, 0.4)
      },
    }
  }
  const heads = columns.map(({ head }) => head)
  return [
    line(heads, { size: 8, ink: 'soft' }, true),
    ...rows.map((cells, index) => line(cells, { size: 9 }, index < rows.length - 1)),
  ]
}

/** Blocks one under the other as one block. */
export function stack(blocks: readonly Block[]): Block {
  return {
    height: blocks.reduce((sum, { height }) => sum + height, 0),
    draw: (y) => {
      let top = y
      for (const block of blocks) {
        block.draw(top)
        top += block.height
      }
    },
  }
}

export function beside(...blocks: readonly Block[]): Block {
  return {
    height: Math.max(...blocks.map(({ height }) => height)),
    draw: (y) => blocks.forEach((block) => block.draw(y)),
  }
}

export function rule({ doc }: Paper, x: number, y: number, width: number, weight = 0.6): void {
  doc
    .save()
    .moveTo(x, y)
    .lineTo(x + width, y)
    .lineWidth(weight)
    .stroke(inks.rule)
    .restore()
}

/** Where the blocks of a paper go: from `top` to `bottom` of each page. */
export interface Flow {
  readonly top: number
  readonly bottom: number
  readonly newPage: () => void
}

/** Sets blocks down the pages; one that doesn't fit any more goes on the next page. Gives the y below the last. */
export function setDown(blocks: readonly Block[], from: number, { top, bottom, newPage }: Flow): number {
  let y = from
  for (const block of blocks) {
    if (y + block.height > bottom && y > top) {
      newPage()
      y = top
    }
    block.draw(y)
    y += block.height
  }
  return y
}
