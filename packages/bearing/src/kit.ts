import type { Designation } from './designation.ts'
import { printDesignation } from './designation.ts'
import { sleeveFor } from './kit-pair.ts'
import { locatingRings, type RingInput } from './rings.ts'
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
}

/**
 * The kit of one position from bearing and role: bearing, sleeve, nut, washer or clip (always new), rings from the measured
 * seat, seals (new, by shaft and housing: the site's codes) and grease. R-KIT-PAIR, R-RING.
 */
export function proposeKit(input: KitInput): KitProposal {
  const sleeve = input.bearing.taper === null ? null : sleeveFor(input.bearing)
  const rings = input.rings ? locatingRings(input.rings) : null
  const questions = [
    ...(sleeve && !sleeve.found ? [sleeve.reason] : []),
    ...(rings === null ? ['Measure the seat of the housing: the rings follow from it.'] : []),
    ...(rings?.kind === 'refused' ? [rings.sentence] : []),
    ...(input.greaseG === null ? ['How much grease is planned for bearing and housing?'] : []),
    'Which seals fit this shaft and housing? They are not tabled.',
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
  return { lines, questions, source: formula('kit of one position'), rule: 'R-KIT-PAIR, R-RING', cautions }
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
