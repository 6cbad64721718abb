import { plummerBlockFor } from '@shaftbook/standards/plummer-blocks'
import { codeWithBore, printDesignation, type Designation } from './designation.ts'
import { sleeveFor, type SleeveChoice } from './kit-pair.ts'
import { locatingRings, type RingInput } from './rings.ts'
import { inchOrMetric, type ThreadSystem } from './shaft.ts'
import { formula, type Sourced } from './source.ts'

export interface KitLine {
  part: 'bearing' | 'sleeve' | 'nut' | 'washer or clip' | 'locating ring' | 'seal' | 'grease'
  /** null where the site has to fill it in. */
  code: string | null
  quantity: number
  unit: 'pieces' | 'g'
  need: 'must' | 'may'
  note: string
}

export interface KitProposal extends Sourced {
  lines: KitLine[]
  /** What a person has to answer before the kit is complete. */
  questions: string[]
}

export interface KitInput {
  bearing: Designation
  /** Measured seat and bearing width; without them the rings stay a question. */
  rings: RingInput | null
  /** Planned fill in g; null when not planned. */
  greaseG: number | null
  /** Measured shaft in mm, and whether it is an inch or a metric one where somebody has said so. */
  shaft?: { mm: number; system: ThreadSystem | null } | null
  /** Code of the housing, such as SN520. */
  housingCode?: string | null
}

/**
 * The kit of one position from bearing, shaft, housing and role: bearing, sleeve, nut, washer or clip (always new), rings from
 * the measured seat, seals (new, by shaft and housing: no table has a row, so the site's codes) and grease. R-KIT-PAIR, R-RING, R-INCH.
 */
export function proposeKit(input: KitInput): KitProposal {
  const sleeve = input.bearing.taper === null ? null : sleeveFor(input.bearing)
  const rings = input.rings ? locatingRings(input.rings) : null
  const questions = [
    ...shaftQuestions(input, sleeve),
    ...housingQuestions(input),
    ...(sleeve && !sleeve.found ? [sleeve.reason] : []),
    ...(rings === null ? ['Measure the seat of the housing: the rings follow from it.'] : []),
    ...(rings?.kind === 'refused' ? [rings.sentence] : []),
    ...(input.greaseG === null ? ['How much grease is planned for bearing and housing?'] : []),
    'Which seals fit this shaft and housing? No table has a row for seals: enter the codes of the housing’s maker.',
  ]
  const lines: KitLine[] = [
    piece('bearing', printDesignation(input.bearing), 1, 'must', 'In its pack until it is measured.'),
    ...(sleeve?.found ? sleeveLines(sleeve) : []),
    ...(rings?.kind === 'rings'
      ? [piece('locating ring', `${rings.widthMm} mm`, rings.count, 'must', rings.sentence)]
      : []),
    piece('seal', null, 2, 'must', 'Always new; by shaft diameter and housing.'),
    ...(input.greaseG === null ? [] : [grease(input.greaseG)]),
  ]
  const cautions = [...(sleeve?.found ? sleeve.cautions : []), ...(rings?.cautions ?? [])]
  return { lines, questions, source: formula('kit of one position'), rule: 'R-KIT-PAIR, R-RING, R-INCH', cautions }
}

/** The sleeve of the table against the shaft as measured; an inch shaft never takes a metric sleeve. */
function shaftQuestions({ shaft, bearing }: KitInput, sleeve: SleeveChoice | null): string[] {
  if (!shaft) return []
  const answer = inchOrMetric(shaft.mm, shaft.system)
  if (answer.kind === 'ask') return [answer.sentence]
  if (!sleeve?.found) return []
  if (answer.system === 'inch')
    return [
      `${sleeve.sleeveCode} is metric and the shaft is an inch one: enter the inch sleeve for ${bearing.basicCode}.`,
    ]
  if (Math.abs(shaft.mm - sleeve.shaftMm) <= 0.5) return []
  return [
    `${sleeve.sleeveCode} is for a shaft of ${sleeve.shaftMm} mm, this one measures ${shaft.mm} mm: which is right?`,
  ]
}

function housingQuestions({ housingCode, bearing }: KitInput): string[] {
  if (!housingCode) return []
  const lookup = plummerBlockFor(housingCode.trim().toUpperCase().replace(/\s+/g, ''), codeWithBore(bearing))
  return lookup.found ? [] : [lookup.reason]
}

function sleeveLines(sleeve: {
  sleeveCode: string
  nutCode: string
  lockingCode: string
  lockingType: string
}): KitLine[] {
  return [
    piece(
      'sleeve',
      sleeve.sleeveCode,
      1,
      'must',
      'Reused only after inspection: no galling, no cracks, seat blue above 80 %.',
    ),
    piece('nut', sleeve.nutCode, 1, 'may', 'Reused if undamaged.'),
    piece('washer or clip', sleeve.lockingCode, 1, 'must', `Always new (${sleeve.lockingType}).`),
  ]
}

function piece(
  part: KitLine['part'],
  code: string | null,
  quantity: number,
  need: KitLine['need'],
  note: string,
): KitLine {
  return { part, code, quantity, unit: 'pieces', need, note }
}

function grease(quantity: number): KitLine {
  return { part: 'grease', code: null, quantity, unit: 'g', need: 'must', note: 'The grease of the position’s plan.' }
}
