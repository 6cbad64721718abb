import { sleeveByCode, sleeveForSrb } from '@shaftbook/standards/adapter-sleeves'
import type { AdapterSleeveRow } from '@shaftbook/standards/adapter-sleeves.data'
import { plummerBlockFor } from '@shaftbook/standards/plummer-blocks'
import type { PlummerBlockRow } from '@shaftbook/standards/plummer-blocks.data'
import type { BearingTypeRow, KitLineRow, PartRow } from './catalogue-rows.ts'

/** One line of a kit before the store has given its part a number and a bin. */
export type WantedPart = Pick<PartRow, 'kind' | 'designation' | 'description'> &
  Pick<KitLineRow, 'quantity' | 'unit' | 'need' | 'reason'>

export interface KitPlace {
  bearingType: BearingTypeRow
  housingCode: string | null
  locating: boolean
  shaftDiameterMm: number
  greaseName: string
}

/** Grease for the first fill in g, to whole 10 g: the bearing's free space, and a third of as much again. Rule R-FILL. */
export function firstFillG(type: BearingTypeRow): { bearingG: number; housingG: number } {
  const ringsCm3 = ((Math.PI / 4) * type.widthMm * (type.outsideDiameterMm ** 2 - type.boreMm ** 2)) / 1000
  const freeG = Math.max(0, ringsCm3 - ((type.massKg ?? 0) / 7.8) * 1000) * 0.9
  const round = (grams: number): number => Math.max(10, Math.round(grams / 10) * 10)
  return { bearingG: round(freeG), housingG: round(freeG / 3) }
}

/** The adapter sleeve with its nut and washer, where the tables pair one with the bearing (rule R-KIT-PAIR). */
export function sleeveOf(type: BearingTypeRow): AdapterSleeveRow | null {
  if (type.taper === null) return null
  // the table names sleeves for self-aligning ball bearings by series only: H2 for 12..K
  const ball = type.kind === 'self-aligning-ball' && type.series === '12'
  const lookup = ball ? sleeveByCode(`H2${type.basicCode.slice(-2)}`) : sleeveForSrb(`${type.basicCode}K`)
  return lookup.found ? lookup.row : null
}

/** The housing with its rings, where the tables pair it with the bearing (rule R-RING). */
export function housingOf(housingCode: string | null, type: BearingTypeRow): PlummerBlockRow | null {
  if (housingCode === null) return null
  const lookup = plummerBlockFor(housingCode, `${type.basicCode}K`)
  return lookup.found ? lookup.row : null
}

/** Everything that goes on with the bearing at a position, in the order in which it is laid out. */
export function wantedParts(place: KitPlace): WantedPart[] {
  const { bearingType: type, greaseName } = place
  const fill = firstFillG(type)
  return [
    must('bearing', type.designation, `Bearing ${type.boreMm} × ${type.outsideDiameterMm} × ${type.widthMm} mm`, 1),
    ...seatParts(place),
    ...housingParts(place),
    must(
      'grease',
      greaseName,
      'Grease, cartridge or pail',
      fill.bearingG + fill.housingG,
      'g',
      'Bearing full, housing a third',
    ),
  ]
}

function seatParts(place: KitPlace): WantedPart[] {
  const sleeve = sleeveOf(place.bearingType)
  if (sleeve === null) return []
  return [
    must('sleeve', sleeve.sleeveCode, `Adapter sleeve for shaft ${sleeve.shaftMm} mm, thread ${sleeve.thread}`, 1),
    must('nut', sleeve.nutCode, `Lock nut ${sleeve.thread}`, 1, 'pc', 'A nut without damage may be used again'),
    must('washer', sleeve.lockingCode, 'Lock washer', 1, 'pc', 'Always new'),
  ]
}

function housingParts(place: KitPlace): WantedPart[] {
  const { housingCode, shaftDiameterMm, locating, bearingType } = place
  if (housingCode === null) {
    return [must('seal', `Seal ${shaftDiameterMm}`, `Seal ring for shaft ${shaftDiameterMm} mm`, 2, 'pc', 'Always new')]
  }
  const housing = housingOf(housingCode, bearingType)
  const rings =
    locating && housing
      ? [
          must(
            'ring',
            `Ring ${housing.seatDiameterMm}/${housing.ringWidthIfTwoMm}`,
            'Locating ring',
            housing.ringsLocating,
          ),
        ]
      : []
  return [
    ...rings,
    must(
      'seal',
      `Seal ${shaftDiameterMm}/${housingCode}`,
      `Split seal for shaft ${shaftDiameterMm} mm`,
      2,
      'pc',
      'Always new',
    ),
    {
      ...must('bolts', `Cap bolts ${housingCode}`, 'Set of cap bolts', 1, 'set', 'When a thread is worn'),
      need: 'may',
    },
  ]
}

function must(
  kind: PartRow['kind'],
  designation: string,
  description: string,
  quantity: number,
  unit = 'pc',
  reason = '',
): WantedPart {
  return { kind, designation, description, quantity, unit, need: 'must', reason }
}
