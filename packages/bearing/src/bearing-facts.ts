import { nutByCode } from '@shaftbook/standards/lock-nuts'
import { washerByCode } from '@shaftbook/standards/lock-washers'
import { plummerBlocksByCode } from '@shaftbook/standards/plummer-blocks'
import { sleeveByCode } from '@shaftbook/standards/adapter-sleeves'
import { srbByBasicCode } from '@shaftbook/standards/srb-dimensions'
import { isSphericalRoller, parseDesignation, printDesignation, type Designation } from './designation.ts'
import { parsePartCode, type PartCode } from './part-code.ts'
import { certaintyCautions, formula, standardRow, type Source, type Sourced } from './source.ts'

export interface BearingFacts extends Sourced, Designation {
  /** In one form, such as 22220 K/C3. */
  printed: string
  /** null where no table has the bearing: its maker gives them. */
  outsideDiameterMm: number | null
  widthMm: number | null
}

/** What a designation says, and the boundary dimensions of a spherical roller bearing that ISO 15 has for it. */
export function bearingFacts(text: string, field = 'designation'): BearingFacts {
  const designation = parseDesignation(text, field)
  const row = isSphericalRoller(designation.series) ? srbByBasicCode(designation.basicCode) : null
  const source = row?.found ? standardRow(row, designation.basicCode) : formula('the designation as written')
  const missing = `There is no row for ${designation.basicCode} in the table of dimensions: enter them from its maker.`
  return {
    ...designation,
    printed: printDesignation(designation),
    outsideDiameterMm: row?.found ? row.row.outsideDiameterMm : null,
    widthMm: row?.found ? row.row.widthMm : null,
    source,
    rule: 'R-CL1',
    cautions: row?.found ? certaintyCautions(source) : [missing],
  }
}

export interface PartFacts extends Sourced, PartCode {
  /** What the tables say of it, a sentence each; empty where no table has it. */
  facts: string[]
}

/** What the code of a sleeve, nut, washer, clip or housing says, with what the tables know of it. R-KIT-PAIR. */
export function partFacts(text: string, field = 'code'): PartFacts {
  const part = parsePartCode(text, field)
  const known = knownOf(part)
  const source = known?.source ?? formula('the code as written')
  const missing = known ? [] : [`No table has a row for ${part.code}: measure the part or ask its maker.`]
  const inch = part.system === 'inch' ? ['Inch sleeves, nuts and washers never go with metric ones.'] : []
  const cautions = [...certaintyCautions(source), ...missing, ...inch]
  return { ...part, facts: known?.facts ?? [], source, rule: 'R-KIT-PAIR', cautions }
}

function knownOf({ kind, code }: PartCode): { source: Source; facts: string[] } | null {
  if (kind === 'sleeve') return sleeveFacts(code)
  if (kind === 'nut') return nutFacts(code)
  if (kind === 'washer') return washerFacts(code)
  if (kind === 'clip') return null
  return housingFacts(code)
}

function sleeveFacts(code: string): { source: Source; facts: string[] } | null {
  const lookup = sleeveByCode(code)
  if (!lookup.found) return null
  const { shaftMm, bearingBoreMm, thread, nutCode, lockingCode, lengthMm } = lookup.row
  const facts = [
    `Shaft ${shaftMm} mm, bearing bore ${bearingBoreMm} mm, length ${lengthMm} mm.`,
    `Thread ${thread}: nut ${nutCode}, locked by ${lockingCode}.`,
  ]
  return { source: standardRow(lookup, code), facts }
}

function nutFacts(code: string): { source: Source; facts: string[] } | null {
  const lookup = nutByCode(code)
  if (!lookup.found) return null
  const { thread, pitchMm, slots, lockingCode } = lookup.row
  const locked = lockingCode === null ? 'what locks it is not tabled' : `locked by ${lockingCode}`
  const facts = [`Thread ${thread}, pitch ${pitchMm} mm, ${slots} slots, ${locked}.`]
  return { source: standardRow(lookup, code), facts }
}

function washerFacts(code: string): { source: Source; facts: string[] } | null {
  const lookup = washerByCode(code)
  if (!lookup.found) return null
  const { boreMm, outsideDiameterMm, outerTabs } = lookup.row
  const facts = [`Bore ${boreMm} mm, outside diameter ${outsideDiameterMm} mm, ${outerTabs} tabs by the table.`]
  return { source: standardRow(lookup, code), facts }
}

function housingFacts(code: string): { source: Source; facts: string[] } | null {
  const rows = plummerBlocksByCode(code)
  const [first] = rows
  if (!first) return null
  const pairs = rows.map((row) => `${row.bearingCode} with ${row.sleeveCode} on ${row.shaftMm} mm`)
  const facts = [
    `Seat ${first.seatDiameterMm} mm, width ${first.seatWidthMm} mm: measure it, it differs by make.`,
    `Takes ${pairs.join(', ')}.`,
  ]
  const { standard, certainty } = first
  return { source: { kind: 'standard', title: standard, edition: null, row: code, certainty }, facts }
}
