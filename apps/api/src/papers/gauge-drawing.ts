import type { Verdict } from '@shaftbook/contract/judgement'
import type { Block, Column } from './blocks.ts'
import { clearanceWindow, gaugeScale, spreadOut, type GaugeFigures } from './gauge-scale.ts'
import { inks, type Ink, type Paper } from './paper.ts'
import { drawVerdict, verdictWords } from './verdict-shape.ts'
import { micrometres } from './words.ts'

interface Plot {
  readonly paper: Paper
  /** The axis. */
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly yOf: (um: number) => number
  readonly offScale: (um: number) => 'above' | 'below' | null
}

interface Label {
  readonly y: number
  readonly word: string
  readonly um: number
  readonly ink: Ink
}

export interface DrawnGauge extends GaugeFigures {
  readonly className: string | null
  readonly verdict: Verdict | null
}

const axisRoom = 30
const labelRoom = 112

/** The clearance gauge as it stood when the record was kept: a vertical scale in µm. */
export function gaugeBlock({ paper, x, width }: Column, gauge: DrawnGauge, height = 218): Block {
  return {
    height: height + 16,
    draw: (y) => {
      const plot = plotOf(paper, gauge, { x, y, width, height })
      drawWindow(plot, gauge)
      drawResidual(plot, gauge)
      drawClass(plot, gauge)
      drawAxis(plot, gauge)
      drawReadings(plot, gauge)
      drawLabels(plot, labelsOf(plot, gauge))
      if (gauge.meanUm !== null) drawMean(plot, gauge, gauge.meanUm)
      drawKey(plot, y + height + 2)
    },
  }
}

function plotOf(paper: Paper, gauge: DrawnGauge, box: { x: number; y: number; width: number; height: number }): Plot {
  const { lowUm, highUm } = gaugeScale(gauge)
  const [top, bottom] = [box.y + 16, box.y + box.height - 4]
  const held = (um: number): number => Math.min(highUm, Math.max(lowUm, um))
  return {
    paper,
    left: box.x + axisRoom,
    right: box.x + box.width - labelRoom,
    top,
    bottom,
    yOf: (um) => bottom - ((held(um) - lowUm) / (highUm - lowUm)) * (bottom - top),
    offScale: (um) => (um > highUm ? 'above' : um < lowUm ? 'below' : null),
  }
}

function drawWindow({ paper: { doc }, left, right, yOf }: Plot, { benchUm, bandUm }: DrawnGauge): void {
  const window = clearanceWindow(benchUm, bandUm)
  if (!window) return
  const [top, bottom] = [yOf(window.toUm), yOf(window.fromUm)]
  doc
    .save()
    .rect(left, top, right - left, bottom - top)
    .fill(inks.window)
  for (const y of [top, bottom]) doc.moveTo(left, y).lineTo(right, y)
  doc.lineWidth(0.6).stroke(inks.inside).restore()
}

/** The least clearance: a line with hatching below it, where nobody wants to be. */
function drawResidual({ paper: { doc }, left, right, bottom, yOf }: Plot, { residualMinUm }: DrawnGauge): void {
  if (residualMinUm === null) return
  const y = yOf(residualMinUm)
  const depth = Math.min(9, bottom - y)
  doc
    .save()
    .rect(left, y, right - left, depth)
    .clip()
  for (let at = left - depth; at < right; at += 5) doc.moveTo(at, y + depth).lineTo(at + depth, y)
  doc.lineWidth(0.5).stroke(inks.over).restore()
  doc.save().moveTo(left, y).lineTo(right, y).lineWidth(1).stroke(inks.over).restore()
}

function drawClass({ paper, left, yOf }: Plot, { classUm, className }: DrawnGauge): void {
  if (!classUm) return
  const [top, bottom, x] = [yOf(classUm.maxUm), yOf(classUm.minUm), left + 9]
  const { doc } = paper
  doc
    .save()
    .moveTo(x + 4, top)
    .lineTo(x, top)
    .lineTo(x, bottom)
    .lineTo(x + 4, bottom)
  doc.lineWidth(0.8).stroke(inks.soft).restore()
  if (className) paper.write(className, x + 4, (top + bottom) / 2 - 5, 24, { size: 8, ink: 'soft' })
}

function drawAxis(plot: Plot, gauge: DrawnGauge): void {
  const { paper, left, right, top, bottom, yOf } = plot
  const { doc } = paper
  doc.save().moveTo(left, top).lineTo(left, bottom).lineWidth(1).stroke(inks.ink).restore()
  for (const um of gaugeScale(gauge).ticksUm) {
    const y = yOf(um)
    doc
      .save()
      .moveTo(left - 4, y)
      .lineTo(left, y)
      .lineWidth(0.7)
      .stroke(inks.ink)
      .restore()
    paper.write(String(um), left - axisRoom, y - 5, axisRoom - 7, { size: 8, align: 'right', ink: 'soft' })
  }
  paper.write('µm', left - axisRoom, top - 16, axisRoom - 7, { size: 8, align: 'right', ink: 'soft' })
  if (gauge.benchUm === null) return
  const y = yOf(gauge.benchUm)
  doc.save().moveTo(left, y).lineTo(right, y).lineWidth(1).dash(4, { space: 2 }).stroke(inks.ink).restore()
}

function drawReadings({ paper: { doc }, left, right, yOf, offScale }: Plot, { readings }: DrawnGauge): void {
  const [from, to] = [left + 46, right - 24]
  const gap = readings.length > 1 ? Math.min(20, (to - from) / (readings.length - 1)) : 0
  readings.forEach(({ row, um }, index) => {
    const [x, y] = [from + index * gap, yOf(um)]
    doc
      .save()
      .rect(x - 2.6, y - 2.6, 5.2, 5.2)
      .lineWidth(0.9)
    if (row === 'A') doc.fillAndStroke(inks.ink, inks.ink)
    else doc.fillAndStroke('#FFFFFF', inks.ink)
    const off = offScale(um)
    if (off) {
      const way = off === 'above' ? -1 : 1
      doc.polygon([x - 3, y + 5 * way], [x + 3, y + 5 * way], [x, y + 10 * way]).fill(inks.ink)
    }
    doc.restore()
  })
}

function drawMean({ paper, left, right, yOf }: Plot, { verdict }: DrawnGauge, meanUm: number): void {
  const y = yOf(meanUm)
  paper.doc.save().moveTo(left, y).lineTo(right, y).lineWidth(1.4).stroke(inks.accent).restore()
  if (verdict) drawVerdict(paper, verdict, right - 9, y, 5)
}

function labelsOf({ yOf, offScale }: Plot, gauge: DrawnGauge): Label[] {
  const { benchUm, bandUm, residualMinUm, meanUm, verdict } = gauge
  const window = clearanceWindow(benchUm, bandUm)
  const label = (word: string, um: number | null | undefined, ink: Ink): Label[] =>
    typeof um === 'number' ? [{ y: yOf(um), word: offScale(um) ? `${word}, off scale` : word, um, ink }] : []
  const meanWord = verdict ? `Mean, ${verdictWords[verdict].toLowerCase()}` : 'Mean'
  return [
    ...label('Bench', benchUm, 'ink'),
    ...label('Window from', window?.toUm, 'inside'),
    ...label('Window to', window?.fromUm, 'inside'),
    ...label(meanWord, meanUm, 'accent'),
    ...label('Residual min', residualMinUm, 'over'),
  ].toSorted((a, b) => a.y - b.y)
}

function drawLabels({ paper, right, top, bottom }: Plot, labels: readonly Label[]): void {
  const { doc } = paper
  const places = spreadOut(
    labels.map(({ y }) => y),
    13,
    top,
    bottom,
  )
  labels.forEach(({ y, word, um, ink }, index) => {
    const at = places[index]!
    doc
      .save()
      .moveTo(right, y)
      .lineTo(right + 8, at)
      .lineTo(right + 11, at)
      .lineWidth(0.5)
      .stroke(inks[ink])
      .restore()
    const style = { size: 8.5, ink } as const
    paper.write(word, right + 13, at - 5.5, labelRoom - 13, style)
    paper.write(micrometres(um), right + 13, at - 5.5, labelRoom - 13, { ...style, face: 'semibold', align: 'right' })
  })
}

function drawKey({ paper, left }: Plot, y: number): void {
  const { doc } = paper
  doc
    .save()
    .rect(left, y + 3, 5, 5)
    .fill(inks.ink)
    .restore()
  doc
    .save()
    .rect(left + 42, y + 3, 5, 5)
    .lineWidth(0.9)
    .stroke(inks.ink)
    .restore()
  const style = { size: 8, ink: 'soft' } as const
  paper.write('row A', left + 8, y, 32, style)
  paper.write('row B', left + 50, y, 200, style)
  paper.write('mounted readings, left to right as taken', left + 80, y, 200, style)
}
