import { assert, constant, integer, pre, property, record } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { a4Sheet, labelPaperFault, labelPlaces, labelSheet, rollSheet } from './label-sheet.ts'
import { LabelPaper } from './papers.ts'

describe('a4Sheet(given)', () => {
  it('gives labels what margins and gaps leave over of 210 × 297 mm', () => {
    // (210 − 2 × 7.5 − 2 × 2.5) / 3 = 190 / 3 = 63.333; (297 − 2 × 15.5 − 6 × 0) / 7 = 266 / 7 = 38
    const sheet = a4Sheet({ columns: 3, rows: 7, leftMm: 7.5, topMm: 15.5, columnGapMm: 2.5, rowGapMm: 0 })
    expect(sheet.labelWidthMm).toBeCloseTo(63.3333, 4)
    expect(sheet.labelHeightMm).toBe(38)
  })
})

describe('labelPlaces(sheet, count, startAt)', () => {
  // (210 − 2 × 5 − 10) / 2 = 95 wide, (297 − 2 × 8 − 2 × 4) / 3 = 91 high
  const sheet = a4Sheet({ columns: 2, rows: 3, leftMm: 5, topMm: 8, columnGapMm: 10, rowGapMm: 4 })

  it('goes row by row from the first free label, then over the next pages', () => {
    expect(labelPlaces(sheet, 4, 5)).toEqual([
      { page: 0, xMm: 5, yMm: 198 },
      { page: 0, xMm: 110, yMm: 198 },
      { page: 1, xMm: 5, yMm: 8 },
      { page: 1, xMm: 110, yMm: 8 },
    ])
  })

  it('puts one label on each page of a roll', () => {
    const places = labelPlaces(rollSheet(62, 29), 2, 1)
    expect(places).toEqual([
      { page: 0, xMm: 0, yMm: 0 },
      { page: 1, xMm: 0, yMm: 0 },
    ])
  })

  it('keeps every label inside its page and clear of every other, on any paper that is not refused', () => {
    const papers = record({
      paper: constant('a4' as const),
      columns: integer({ min: 1, max: 8 }),
      rows: integer({ min: 1, max: 18 }),
      leftMm: integer({ min: 0, max: 20 }),
      topMm: integer({ min: 0, max: 20 }),
      columnGapMm: integer({ min: 0, max: 6 }),
      rowGapMm: integer({ min: 0, max: 6 }),
    })
    assert(
      property(papers, (given) => {
        const paper = LabelPaper.parse(given)
        pre(labelPaperFault(paper) === null)
        const sheet = labelSheet(paper)
        const places = labelPlaces(sheet, paper.columns * paper.rows, 1)
        const slip = 1e-9
        for (const { page, xMm, yMm } of places) {
          expect(page).toBe(0)
          expect(Math.min(xMm, yMm)).toBeGreaterThanOrEqual(0)
          expect(xMm + sheet.labelWidthMm).toBeLessThanOrEqual(210 + slip)
          expect(yMm + sheet.labelHeightMm).toBeLessThanOrEqual(297 + slip)
        }
        const overlapping = places.some((a, i) =>
          places.some(
            (b, j) =>
              i < j &&
              Math.abs(a.xMm - b.xMm) < sheet.labelWidthMm - slip &&
              Math.abs(a.yMm - b.yMm) < sheet.labelHeightMm - slip,
          ),
        )
        expect(overlapping).toBe(false)
      }),
    )
  })
})

describe('labelPaperFault(paper)', () => {
  it('refuses labels that are too small to be read, with the size that is left', () => {
    // (210 − 2 × 8 − 7 × 3) / 8 = 21.625
    expect(labelPaperFault(LabelPaper.parse({ paper: 'a4', columns: 8 }))).toMatch(
      /^Margins and gaps leave 21.6 × 34.1 mm/,
    )
  })

  it('refuses to start behind the last label of the sheet', () => {
    const paper = { paper: 'a4', columns: 3, rows: 8 }
    expect(labelPaperFault(LabelPaper.parse({ ...paper, startAt: 24 }))).toBeNull()
    expect(labelPaperFault(LabelPaper.parse({ ...paper, startAt: 25 }))).toMatch(/24 labels/)
  })
})
