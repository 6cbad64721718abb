import type { PositionOverview } from '@shaftbook/contract/position-views'
import {
  beside,
  factList,
  halves,
  paragraph,
  partTitle,
  setDown,
  space,
  stack,
  type Block,
  type Column,
} from './blocks.ts'
import { bearingFacts, bandFacts, cautions, seatAndGreaseFacts, type BlankSheet } from './blank-sheet-facts.ts'
import { a4, mm, openPaper } from './paper.ts'
import { printFeet, printHead, type Head } from './paper-frame.ts'
import { plainNumber, plantTime } from './words.ts'
import { ticks, writingLines, writingTable } from './writing-blocks.ts'

const [width, height] = a4
const edge = 15 * mm

/** A sheet with the position's own numbers and empty boxes, for whoever has to use paper: two A4 pages. */
export async function blankSheet(contents: BlankSheet): Promise<Uint8Array<ArrayBuffer>> {
  const { place, site, printedAt } = contents
  const { tag } = place.position
  const paper = openPaper({ title: `Blank mount sheet of ${tag}`, size: a4, madeAt: printedAt })
  const column: Column = { paper, x: edge, width: width - 2 * edge }
  const startPage = (): number => {
    paper.doc.addPage()
    return printHead(column, headOf(contents), paper.doc.bufferedPageRange().count === 1)
  }
  const top = startPage()
  const flow = { top: edge + 22, bottom: height - 18 * mm, newPage: () => void startPage() }
  setDown([...measuringBlocks(column, contents), ...closingBlocks(column, contents)], top, flow)
  printFeet(column, `Blank sheet of ${tag}, printed ${plantTime(printedAt, site.timeZone)}. The record is in the book.`)
  return await paper.finish()
}

function headOf({ place, site, address }: BlankSheet): Head {
  const { position, machine, area, bearingType, shaft } = place
  return {
    kind: 'Mount sheet to fill in by hand',
    title: `${position.tag}  ${machine.name}`,
    cells: [
      ['Site', site.name],
      ['Position', position.name],
      ['Machine', `${machine.tag} ${machine.name}`],
      ['Area', area.name],
      ['Bearing', bearingType.designation],
      ['This end', position.locating ? 'locating' : 'non-locating'],
      ['Shaft', `${shaft.name}${shaft.speedRpm === null ? '' : `, ${plainNumber(shaft.speedRpm)} rev/min`}`],
      ['Housing', position.housingCode ?? 'not in the book'],
    ],
    qr: address,
  }
}

const places = ['1', '2', '3', '4', '5', '6'] as const
const rowNames = ['Row A', 'Row B'] as const
const cellsOf = (name: string, count: number): string[] => [name, ...Array.from({ length: count }, () => '')]

/** The first page: what holds here, and what is measured. */
function measuringBlocks(column: Column, contents: BlankSheet): Block[] {
  const { place } = contents
  const [left, right] = halves(column, 0.5)
  const isDriven = place.position.seat !== 'cylindrical' && place.bearingType.taper !== null
  return [
    paragraph(column, cautions, { size: 8.5 }),
    beside(
      stack([partTitle(left, 'Bearing and clearance'), ...factList(left, bearingFacts(place), 96)]),
      stack([partTitle(right, 'Band and drive-up'), ...factList(right, bandFacts(contents), 96)]),
    ),
    space(4),
    ...writingLines(column, ['Date and time', 'Permit reference', 'Fitted by', 'Checked by'], 4),
    ...writingLines(column, ['Why is a bearing fitted?', 'Hour meter shows, h', 'Feeler set', 'Temperature, °C'], 4),
    ...clearanceTable(column, 'Bench clearance: bearing before it goes on'),
    ...(isDriven ? [...windowBlocks(column, contents), ...driveBlocks(column)] : []),
    ...clearanceTable(column, 'Mounted clearance'),
    space(2),
    ...writingLines(column, ['Reduction: bench mean less mounted mean', 'Left: the mounted mean', 'Read by'], 3),
  ]
}

function clearanceTable(column: Column, title: string): Block[] {
  return [
    partTitle(column, `${title}. Unit: ______`),
    ...writingTable(
      column,
      ['', ...places.map((place) => `Place ${place}`), 'Mean'],
      rowNames.map((row) => cellsOf(row, places.length + 1)),
    ),
    space(2),
  ]
}

/** The window is the bench mean less the band: two subtractions to fill in. */
function windowBlocks(column: Column, { place }: BlankSheet): Block[] {
  const { band } = place
  const [most, least] = band ? [plainNumber(band.maxUm), plainNumber(band.minUm)] : ['____', '____']
  return [
    partTitle(column, 'Window of the mounted clearance'),
    ...writingLines(
      column,
      ['Bench mean of both rows, µm', `From: bench mean less ${most} µm`, `To: bench mean less ${least} µm`],
      3,
    ),
  ]
}

function driveBlocks(column: Column): Block[] {
  return [
    partTitle(column, 'Drive-up: gauge at each step, stop inside the window, never turn the nut back'),
    ...writingTable(
      column,
      ['Step', 'Travel, mm', 'Nut turned, °', 'Row A', 'Row B', 'Mean', 'Reduction'],
      ['zero', '1', '2', '3', '4', '5'].map((step) => cellsOf(step, 6)),
      [0.6, 1, 1, 1, 1, 1, 1],
      17,
    ),
    space(2),
  ]
}

/** The second page: seat, kit, closing, what came out, and who signs. */
function closingBlocks(column: Column, contents: BlankSheet): Block[] {
  const planes = ['Plane 1, x', 'Plane 1, y', 'Plane 2, x', 'Plane 2, y', 'Plane 3, x', 'Plane 3, y']
  return [
    partTitle(column, 'Shaft, housing and grease'),
    ...sideFacts(column, contents),
    ...writingTable(
      column,
      ['Diameter, mm', ...planes],
      [cellsOf('Shaft', 6), cellsOf('Housing', 6)],
      [1.2, 1, 1, 1, 1, 1, 1],
    ),
    ...writingLines(column, ['Seat width, mm', 'Rings: number', 'Rings: width, mm', 'Rings: where'], 4),
    ...kitBlocks(column, contents.place),
    partTitle(column, 'Close'),
    ...writingLines(
      column,
      ['Locked with', 'Nut forward to the slot, °', 'Cap bolts, N·m', 'Grease in the bearing, g', 'In the housing, g'],
      5,
    ),
    ticks(column, 'Turned by hand', ['free, no drag', 'not free']),
    ...writingTable(
      column,
      ['First run', '10 min', '20 min', '30 min', '45 min', '60 min'],
      [cellsOf('Temperature, °C', 5), cellsOf('Vibration, mm/s', 5)],
      [1.3, 1, 1, 1, 1, 1],
      17,
    ),
    partTitle(column, 'The bearing that came out'),
    ticks(column, 'How it ended', ['failed', 'removed, not failed', 'lost']),
    ...writingLines(column, ['What was seen', 'Cause, if known', 'Looked at by'], 3),
    partTitle(column, 'Notes, and the reason where it is not inside its band'),
    ...writingLines(column, ['', ''], 1),
    space(4),
    ...writingLines(column, ['Fitter: signature, date', 'Checker: signature, date', 'Engineer: signature, date'], 3),
  ]
}

function sideFacts(column: Column, contents: BlankSheet): Block[] {
  const [left, right] = halves(column, 0.5)
  const facts = seatAndGreaseFacts(contents)
  const half = Math.ceil(facts.length / 2)
  return [
    beside(stack(factList(left, facts.slice(0, half), 96)), stack(factList(right, facts.slice(half), 96))),
    space(3),
  ]
}

function kitBlocks(column: Column, { kit }: PositionOverview): Block[] {
  const title = partTitle(column, kit ? `Kit: ${kit.name}` : 'Kit')
  if (!kit) return [title, paragraph(column, 'No kit is named for this position: write down what goes on.'), ...empty()]
  const rows = kit.lines.map(({ designation, partNumber, kind, quantity, unit, need }) => [
    kind,
    designation,
    partNumber,
    `${plainNumber(quantity)} ${unit}`,
    need === 'must' ? 'needed' : 'may',
    '',
    '',
  ])
  const shares = [0.9, 2.2, 1.5, 0.8, 0.8, 0.6, 1.8]
  const heads = ['Part', 'Designation', 'Number', 'Quantity', '', 'There', 'Another one, and why']
  return [title, ...writingTable(column, heads, rows, shares, 17)]

  function empty(): Block[] {
    return writingLines(column, ['Sleeve', 'Nut', 'Washer or clip', 'Seals'], 4)
  }
}
