import type { MountDecision } from '@shaftbook/contract/mount-decisions'
import type { MountRecord } from '@shaftbook/contract/mounts'
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
  type Fact,
} from './blocks.ts'
import {
  asFoundFacts,
  blankFacts,
  closingFacts,
  drivePart,
  kitPart,
  seatFacts,
  startUpFacts,
} from './mount-paper-details.ts'
import { partFacts, peopleFacts, removalFacts, workFacts } from './mount-paper-facts.ts'
import { checksPart, gaugePart, readingsPart, verdictBlock } from './mount-paper-parts.ts'
import { a4, mm, openPaper } from './paper.ts'
import { markDraft, printFeet, printHead, type Head } from './paper-frame.ts'
import { dayWords, plantTime } from './words.ts'

/** All that is printed of a mount record. */
export interface MountPaper {
  readonly record: MountRecord
  readonly site: { readonly name: string; readonly timeZone: string }
  readonly place: {
    readonly positionName: string
    readonly machineTag: string
    readonly areaName: string
    readonly locating: boolean
  }
  readonly greaseName: string | null
  /** The caption of each photo of the record. */
  readonly photos: readonly string[]
  /** The record that corrects this one. */
  readonly correctedBy: {
    readonly signedAt: string | null
    readonly signedBy: string | null
    readonly reason: string | null
  } | null
  /** Where the record is found in the book. */
  readonly address: string
  readonly printedAt: Date
}

const [width, height] = a4
const edge = 15 * mm

/** The mount record as a PDF on A4, usually two pages. */
export async function mountPaper(contents: MountPaper): Promise<Uint8Array<ArrayBuffer>> {
  const { record, printedAt } = contents
  const isDraft = record.signedAt === null
  const paper = openPaper({ title: `Mount at ${record.tag}`, size: a4, madeAt: printedAt })
  const column: Column = { paper, x: edge, width: width - 2 * edge }
  const head = headOf(contents)
  const startPage = (): number => {
    paper.doc.addPage()
    if (isDraft) markDraft(paper)
    return printHead(column, head, paper.doc.bufferedPageRange().count === 1)
  }
  const top = startPage()
  const flow = { top: edge + 34, bottom: height - 20 * mm, newPage: () => void startPage() }
  setDown([...resultBlocks(column, record), ...workBlocks(column, contents)], top, flow)
  const foot = `Mount record ${record.id}, printed ${plantTime(printedAt, contents.site.timeZone)}`
  printFeet(column, foot)
  return await paper.finish()
}

function headOf({ record, site, place, address }: MountPaper): Head {
  const { bearing, signedAt } = record
  return {
    kind: signedAt === null ? 'Mount record, DRAFT' : 'Mount record',
    title: `${record.tag}  ${record.machineName}`,
    cells: [
      ['Site', site.name],
      ['Position', place.positionName],
      ['Machine', `${place.machineTag} ${record.machineName}`],
      ['Area', place.areaName],
      ['Bearing', bearing.serial ? `${bearing.designation}, serial ${bearing.serial}` : bearing.designation],
      ['This end', place.locating ? 'locating' : 'non-locating'],
      ['Mounted', plantTime(record.mountedAt, site.timeZone)],
      ['Signed', signedAt === null ? 'not signed' : plantTime(signedAt, site.timeZone)],
    ],
    qr: address,
  }
}

/** What came out: verdict, gauge, readings, checks. */
function resultBlocks(column: Column, record: MountRecord): Block[] {
  const [left, right] = halves(column, 0.56)
  const gauge = gaugePart(left, record)
  const readings = (at: Column): Block[] => [...readingsPart(at, record), space(6), ...drivePart(at, record)]
  const sideBySide = gauge.length > 0 && stack(readings(right)).height < tallest
  return [
    verdictBlock(column, record),
    ...(sideBySide ? [beside(stack(gauge), stack(readings(right)))] : [...gauge, ...readings(column)]),
    space(6),
    ...checksPart(column, record),
    space(6),
  ]
}

/** Readings higher than this do not stand beside the gauge. */
const tallest = 300

/** How it was done: reasons, people, parts, then step by step what the sheet tells. */
function workBlocks(column: Column, contents: MountPaper): Block[] {
  const { record, site, greaseName, photos } = contents
  const { details } = record
  const lists: FactPart[] = [
    ['People and times', peopleFacts(record, site.timeZone)],
    ['Parts and grease', partFacts(record, greaseName)],
    ['Work', workFacts(record, photos)],
    ['The bearing that comes out', removalFacts(record.removal)],
    ['As found', details.asFound ? asFoundFacts(details.asFound) : []],
    ['Shaft and housing', details.seat ? seatFacts(details.seat) : []],
    ['Lock, rings and cap', closingFacts(details)],
    ['Start-up', details.startUp ? startUpFacts(details.startUp, site.timeZone) : []],
    ['Left blank', blankFacts(details)],
  ]
  return [
    ...reasonBlocks(column, contents),
    ...sideBySide(column, lists),
    ...kitPart(column, details),
    ...(record.note ? [partTitle(column, 'Note'), paragraph(column, record.note)] : []),
  ]
}

type FactPart = readonly [title: string, facts: readonly Fact[]]

/** Lists of facts in two columns, the lower of the two taking the next. */
function sideBySide(column: Column, parts: readonly FactPart[]): Block[] {
  const sides = halves(column, 0.5)
  const piles: [Block[], Block[]] = [[], []]
  for (const [title, facts] of parts) {
    const side = stack(piles[0]).height <= stack(piles[1]).height ? 0 : 1
    const lines = factList(sides[side], facts)
    if (lines.length > 0) piles[side].push(stack([partTitle(sides[side], title), ...lines, space(8)]))
  }
  return [beside(stack(piles[0]), stack(piles[1]))]
}

function reasonBlocks(column: Column, { record, site, correctedBy }: MountPaper): Block[] {
  const facts = [
    { label: 'Why it stayed', value: record.outOfBandReason },
    ...record.decisions.map((decision) => ({ label: 'Engineer', value: decisionWords(decision, site.timeZone) })),
    {
      label: 'Corrects',
      value: record.correctsId && `record ${record.correctsId}. Reason: ${record.correctionReason ?? ''}`,
    },
    {
      label: 'Corrected by',
      value: record.correctedById && correctedWords(record.correctedById, correctedBy, site.timeZone),
    },
  ]
  const lines = factList(column, facts)
  return lines.length === 0 ? [] : [partTitle(column, 'Reasons, decisions, corrections'), ...lines, space(8)]
}

function decisionWords({ kind, until, reason, decidedBy, decidedAt }: MountDecision, timeZone: string): string {
  const what = kind === 'do-again' ? 'To be mounted again' : `Accepted until ${until === null ? '?' : dayWords(until)}`
  return `${what}. Reason: ${reason.replace(/\.$/, '')}. ${decidedBy}, ${plantTime(decidedAt, timeZone)}`
}

function correctedWords(id: string, by: MountPaper['correctedBy'], timeZone: string): string {
  const who = by?.signedAt ? `, ${by.signedBy ?? ''}, ${plantTime(by.signedAt, timeZone)}` : ''
  const why = by?.reason ? ` Reason: ${by.reason.replace(/\.$/, '')}.` : ''
  return `record ${id}${who}.${why} This record does not count any more.`
}
