import { labelPlaces, type LabelSheet } from '@shaftbook/contract/label-sheet'
import { mm, openPaper, type Paper, type Style } from './paper.ts'
import { drawQr } from './qr-drawing.ts'

/** What stands on the label of a position. */
export interface PositionLabel {
  readonly tag: string
  readonly name: string
  readonly machine: string
  /** The address that the QR code holds. */
  readonly address: string
}

interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** QR labels of positions as a PDF, from place `startAt` (from 1) of the first page on. */
export async function positionLabels(
  labels: readonly PositionLabel[],
  sheet: LabelSheet,
  startAt: number,
  madeAt: Date,
): Promise<Uint8Array<ArrayBuffer>> {
  const size = [sheet.pageWidthMm * mm, sheet.pageHeightMm * mm] as const
  const paper = openPaper({ title: 'Position labels', size, madeAt })
  let page = -1
  labelPlaces(sheet, labels.length, startAt).forEach((place, index) => {
    while (page < place.page) {
      paper.doc.addPage()
      page += 1
    }
    const [width, height] = [sheet.labelWidthMm * mm, sheet.labelHeightMm * mm]
    drawLabel(paper, labels[index]!, { x: place.xMm * mm, y: place.yMm * mm, width, height })
  })
  return await paper.finish()
}

/** The QR code beside the words on a wide label, over them on a high one. */
function drawLabel(paper: Paper, label: PositionLabel, box: Box): void {
  const edge = Math.min(1.5 * mm, box.height * 0.06)
  const inner = { x: box.x + edge, y: box.y + edge, width: box.width - 2 * edge, height: box.height - 2 * edge }
  const isWide = inner.width >= inner.height * 1.35
  const side = isWide ? Math.min(inner.height, inner.width * 0.5) : Math.min(inner.width, inner.height * 0.66)
  const left = isWide ? inner.x : inner.x + (inner.width - side) / 2
  const top = isWide ? inner.y + (inner.height - side) / 2 : inner.y
  drawQr(paper, label.address, left, top, side)
  const words = isWide
    ? { x: inner.x + side + edge, y: inner.y, width: inner.width - side - edge, height: inner.height }
    : { x: inner.x, y: inner.y + side, width: inner.width, height: inner.height - side }
  drawWords(paper, label, words, isWide ? 'left' : 'center')
}

/** Tag, name and machine, as large as the room lets them be, in the middle of its height. */
function drawWords(paper: Paper, { tag, name, machine }: PositionLabel, box: Box, align: 'left' | 'center'): void {
  const lines = (scale: number): [string, Style][] => [
    [tag, { size: 15 * scale, face: 'semibold', align, lineGap: -2 * scale }],
    [name, { size: 8.5 * scale, align }],
    [machine, { size: 8.5 * scale, align, ink: 'soft' }],
  ]
  const heightAt = (scale: number): number =>
    lines(scale).reduce((sum, [text, style]) => sum + paper.heightOf(text, box.width, style), 0)
  const tagFits = (scale: number): boolean => paper.widthOf(tag, lines(scale)[0]![1]) <= box.width
  let scale = Math.max(1, Math.min(3, box.height / 60))
  while (scale > smallestScale && (heightAt(scale) > box.height || !tagFits(scale))) scale -= 0.04
  const { doc } = paper
  doc.save().rect(box.x, box.y, box.width, box.height).clip()
  let y = box.y + Math.max(0, (box.height - heightAt(scale)) / 2)
  for (const [text, style] of lines(scale)) y += paper.write(text, box.x, y, box.width, style)
  doc.restore()
}

/** Below this nobody reads a label on a machine any more. */
const smallestScale = 0.5
