import { smallestLabelMm, type LabelPaper } from './papers.ts'

/** Where labels go, in millimetres: on a roll one label is a page; on a sheet they stand in columns and rows. */
export interface LabelSheet {
  readonly pageWidthMm: number
  readonly pageHeightMm: number
  readonly columns: number
  readonly rows: number
  readonly labelWidthMm: number
  readonly labelHeightMm: number
  readonly leftMm: number
  readonly topMm: number
  readonly columnGapMm: number
  readonly rowGapMm: number
}

export interface LabelPlace {
  /** From 0. */
  readonly page: number
  readonly xMm: number
  readonly yMm: number
}

/** A4 in columns and rows: the label's size is what margins (same left and right, top and bottom) and gaps leave over. */
export function a4Sheet(given: {
  readonly columns: number
  readonly rows: number
  readonly leftMm: number
  readonly topMm: number
  readonly columnGapMm: number
  readonly rowGapMm: number
}): LabelSheet {
  const [pageWidthMm, pageHeightMm] = [210, 297]
  const { columns, rows, leftMm, topMm, columnGapMm, rowGapMm } = given
  return {
    ...given,
    pageWidthMm,
    pageHeightMm,
    labelWidthMm: (pageWidthMm - 2 * leftMm - (columns - 1) * columnGapMm) / columns,
    labelHeightMm: (pageHeightMm - 2 * topMm - (rows - 1) * rowGapMm) / rows,
  }
}

/** One label on each page of a roll. */
export function rollSheet(widthMm: number, heightMm: number): LabelSheet {
  const none = { leftMm: 0, topMm: 0, columnGapMm: 0, rowGapMm: 0 }
  const label = { labelWidthMm: widthMm, labelHeightMm: heightMm }
  return { pageWidthMm: widthMm, pageHeightMm: heightMm, columns: 1, rows: 1, ...label, ...none }
}

/** Places of `count` labels, row by row, from place `startAt` (from 1) of the first page on. */
export function labelPlaces(sheet: LabelSheet, count: number, startAt: number): LabelPlace[] {
  const perPage = sheet.columns * sheet.rows
  return Array.from({ length: count }, (_, index) => {
    const place = index + startAt - 1
    const onPage = place % perPage
    const [column, row] = [onPage % sheet.columns, Math.floor(onPage / sheet.columns)]
    return {
      page: Math.floor(place / perPage),
      xMm: sheet.leftMm + column * (sheet.labelWidthMm + sheet.columnGapMm),
      yMm: sheet.topMm + row * (sheet.labelHeightMm + sheet.rowGapMm),
    }
  })
}

/** The labels on the chosen paper. */
export function labelSheet(paper: LabelPaper): LabelSheet {
  return paper.paper === 'a4' ? a4Sheet(paper) : rollSheet(paper.widthMm, paper.heightMm)
}

/** The sentence that says why no labels can be printed so; null where they can. */
export function labelPaperFault(paper: LabelPaper): string | null {
  if (paper.paper === 'roll') return null
  const { labelWidthMm, labelHeightMm } = a4Sheet(paper)
  const { width, height } = smallestLabelMm
  if (labelWidthMm < width || labelHeightMm < height) {
    const left = [labelWidthMm, labelHeightMm].map((mm) => Math.max(0, Math.floor(mm * 10) / 10)).join(' × ')
    return `Margins and gaps leave ${left} mm for a label: it takes ${width} × ${height} mm at least. Take fewer columns or rows, or smaller margins.`
  }
  const places = paper.columns * paper.rows
  return paper.startAt > places ? `The sheet has ${places} labels: start at one of them.` : null
}
