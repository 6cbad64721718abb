import { clearanceRange } from '@shaftbook/bearing/clearance'
import type { Check } from '@shaftbook/contract/judgement'
import type { MountRecord, Reading } from '@shaftbook/contract/mounts'
import { paragraph, partTitle, rule, table, tallest, within, type Block, type Column } from './blocks.ts'
import { gaugeBlock } from './gauge-drawing.ts'
import { inks, type Ink, type Paper } from './paper.ts'
import { drawVerdict, verdictInk, verdictWords } from './verdict-shape.ts'
import { asTyped, micrometreRange, micrometres } from './words.ts'

/** Verdict with shape and word, the numbers behind it, uncertainty and where the band comes from. */
export function verdictBlock({ paper, x, width }: Column, { judgement }: MountRecord): Block {
  const style = { size: 9 } as const
  const left = 132
  const lines = verdictLines(judgement).map((line) => within(paper, line, width - left, style, tallest.cell))
  const heights = lines.map((line) => paper.heightOf(line, width - left, style) + 1.5)
  const height = Math.max(
    46,
    heights.reduce((sum, each) => sum + each, 0),
  )
  return {
    height: height + 12,
    draw: (y) => {
      drawMarks(paper, judgement, x, y + 4)
      let top = y + 4
      lines.forEach((line, index) => {
        paper.write(line, x + left, top, width - left, style)
        top += heights[index]!
      })
      rule(paper, x, y + height + 8, width)
    },
  }
}

function drawMarks(paper: Paper, { verdict, residual }: MountRecord['judgement'], x: number, y: number): void {
  if (verdict) {
    drawVerdict(paper, verdict, x + 9, y + 12, 8)
    paper.write(verdictWords[verdict], x + 24, y, 106, { size: 18, face: 'semibold', ink: verdictInk(verdict) })
  } else paper.write('Not judged', x, y, 130, { size: 18, face: 'semibold', ink: 'soft' })
  if (residual && residual !== 'no-minimum') {
    drawVerdict(paper, residual, x + 9, y + 34, 4)
    const word = `Residual: ${verdictWords[residual].toLowerCase()}`
    paper.write(word, x + 24, y + 28, 106, { size: 9, face: 'semibold', ink: verdictInk(residual) })
  }
}

function verdictLines(judgement: MountRecord['judgement']): string[] {
  const { benchMeanUm, mountedMeanUm, reductionUm, band, expandedUncertaintyUm, residualMinUm } = judgement
  const means =
    benchMeanUm === null || mountedMeanUm === null || reductionUm === null
      ? 'No reduction: readings in both rows, before and after, are not all there.'
      : `Bench ${micrometres(benchMeanUm)}, mounted ${micrometres(mountedMeanUm)}: reduction ${micrometres(reductionUm)}.`
  const uncertainty =
    expandedUncertaintyUm === null
      ? []
      : [`Expanded uncertainty of the reduction: ± ${micrometres(expandedUncertaintyUm)}.`]
  const residual =
    residualMinUm === null
      ? 'No residual minimum is set.'
      : `Residual minimum: ${micrometres(residualMinUm)} must be left.`
  return [means, ...bandLines(band), residual, ...uncertainty]
}

const bandKinds = {
  position: "the position's own band",
  'maker-chart': "the maker's chart",
  'generic-guide': 'the generic reduction guide',
} as const

export function bandLines(band: MountRecord['judgement']['band']): string[] {
  if (!band) return ['No band applies to this mount.']
  const { kind, title, edition, row, certainty } = band.source
  const from = [
    kind !== 'generic-guide' && title,
    edition && `edition ${edition}`,
    row && `row ${row}`,
    certainty && `certainty ${certainty}`,
  ].filter(Boolean)
  const more = from.length > 0 ? `: ${from.join(', ')}` : ''
  return [`Band: reduction ${micrometreRange(band.minUm, band.maxUm)}, from ${bandKinds[kind]}${more}.`]
}

/** The gauge as it stood; nothing where nothing was read. */
export function gaugePart(column: Column, record: MountRecord): Block[] {
  const { judgement, bearing, clearanceClass, readings } = record
  if (readings.length === 0) return []
  const bore = bearing.taper === null ? 'cylindrical' : 'tapered'
  const found = clearanceClass && clearanceRange(bearing.boreMm, bore, clearanceClass)
  return [
    partTitle(column, 'Gauge'),
    gaugeBlock(column, {
      benchUm: judgement.benchMeanUm,
      bandUm: judgement.band,
      classUm: found && found.found ? found.range : null,
      className: clearanceClass,
      residualMinUm: judgement.residualMinUm,
      readings: mountedReadings(record).map(({ row, clearanceUm }) => ({ row, um: clearanceUm })),
      meanUm: judgement.mountedMeanUm,
      verdict: judgement.verdict,
    }),
  ]
}

function mountedReadings({ readings }: MountRecord): Reading[] {
  return readings
    .filter(({ moment, struck }) => moment === 'mounted' && !struck)
    .toSorted((a, b) => a.number - b.number)
}

const foundSets = [
  { moment: 'found', row: 'A', head: 'As found A' },
  { moment: 'found', row: 'B', head: 'As found B' },
] as const
const sets = [
  { moment: 'bench', row: 'A', head: 'Bench A' },
  { moment: 'bench', row: 'B', head: 'Bench B' },
  { moment: 'mounted', row: 'A', head: 'Mounted A' },
  { moment: 'mounted', row: 'B', head: 'Mounted B' },
] as const

/** Every reading in its row and order, as it was typed and in µm. */
export function readingsPart(column: Column, { readings, method }: MountRecord): Block[] {
  const title = partTitle(column, 'Readings by row')
  const numbers = readingNumbers(readings)
  if (numbers.length === 0)
    return [title, paragraph(column, `No clearance was read: ${methodWords[method]}.`, { ink: 'soft' })]
  const shown = readings.some(({ moment }) => moment === 'found') ? [...foundSets, ...sets] : sets
  const columns = [
    { head: 'No.', share: 20 },
    ...shown.map(({ head }) => ({ head, share: 50, align: 'right' as const })),
  ]
  const rows = numbers.map((number) => [
    String(number),
    ...shown.map((set) => cellOf(readings.find((each) => isOf(each, { ...set, number })))),
  ])
  return [title, ...table(column, columns, rows)]
}

/** How many readings a row has: the numbers of all that are not of a drive step. */
function readingNumbers(readings: readonly Reading[]): number[] {
  return [...new Set(readings.filter(({ moment }) => moment !== 'step').map(({ number }) => number))].sort(
    (a, b) => a - b,
  )
}

function isOf(reading: Reading, at: Pick<Reading, 'moment' | 'row' | 'number'>): boolean {
  return reading.moment === at.moment && reading.row === at.row && reading.number === at.number
}

/** A reading as typed, and in µm below it where it was typed in another unit. */
export function cellOf(reading: Reading | undefined): string {
  if (!reading) return '–'
  const typed = reading.struck ? `${asTyped(reading)}, struck` : asTyped(reading)
  return reading.typedUnit === 'um' ? typed : `${typed}\n${micrometres(reading.clearanceUm)}`
}

export const methodWords = {
  feeler: 'clearance by feelers',
  'drive-up': 'axial travel',
  'by-feel': 'by feel',
} as const

const outcomes: Readonly<Record<Check['outcome'], { word: string; ink: Ink }>> = {
  pass: { word: 'Holds', ink: 'inside' },
  fail: { word: 'Fails', ink: 'over' },
  warning: { word: 'Look at it', ink: 'under' },
  'not-proven': { word: 'Not proven', ink: 'not-proven' },
  'not-done': { word: 'Not done', ink: 'soft' },
}

/** Each check with its outcome, rule and sentence, and what to look at. */
export function checksPart(column: Column, { judgement }: MountRecord): Block[] {
  const cautions = judgement.cautions.map((sentence) => paragraph(column, `• ${sentence}`, { size: 8.5 }))
  return [
    partTitle(column, 'Checks'),
    ...judgement.checks.map((check) => checkLine(column, check)),
    ...cautions,
    paragraph(column, `Judged by the formulas ${judgement.formulaVersion}.`, { size: 8, ink: 'soft' }),
  ]
}

function checkLine({ paper, x, width }: Column, { name, rule: id, outcome, sentence }: Check): Block {
  const [nameAt, sentenceAt] = [74, 226]
  const { word, ink } = outcomes[outcome]
  const height = Math.max(
    paper.heightOf(sentence, width - sentenceAt, { size: 8.5 }),
    paper.heightOf(`${name}  ${id}`, sentenceAt - nameAt - 8, { size: 8.5 }),
  )
  return {
    height: height + 4,
    draw: (y) => {
      drawOutcome(paper, outcome, x + 4, y + 7)
      paper.write(word, x + 14, y + 1, nameAt - 16, { size: 8.5, face: 'semibold', ink })
      paper.write(`${name}  ${id}`, x + nameAt, y + 1, sentenceAt - nameAt - 8, { size: 8.5 })
      paper.write(sentence, x + sentenceAt, y + 1, width - sentenceAt, { size: 8.5 })
    },
  }
}

/** Tick, cross, triangle, diamond or dash: the outcome of a check as a shape. */
function drawOutcome({ doc }: Paper, outcome: Check['outcome'], x: number, y: number): void {
  doc.save().lineWidth(1.1).lineJoin('round')
  if (outcome === 'pass')
    doc
      .moveTo(x - 3.5, y)
      .lineTo(x - 1, y + 2.5)
      .lineTo(x + 3.5, y - 3)
  if (outcome === 'fail')
    doc
      .moveTo(x - 3, y - 3)
      .lineTo(x + 3, y + 3)
      .moveTo(x + 3, y - 3)
      .lineTo(x - 3, y + 3)
  if (outcome === 'warning') doc.polygon([x, y - 3.8], [x + 4, y + 3], [x - 4, y + 3])
  if (outcome === 'not-proven') doc.polygon([x, y - 3.8], [x + 3.8, y], [x, y + 3.8], [x - 3.8, y])
  if (outcome === 'not-done') doc.moveTo(x - 3, y).lineTo(x + 3, y)
  doc.stroke(inks[outcomes[outcome].ink]).restore()
}
