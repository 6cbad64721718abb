import { InputError } from '@shaftbook/bearing/input-error'
import { locatingRings, type RingPlan } from '@shaftbook/bearing/rings'
import { checkShaft, inchOrMetric, type InchAnswer, type ShaftCheck } from '@shaftbook/bearing/shaft'
import type { SeatReading } from '@shaftbook/contract/mount-details'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import type { BearingType } from './band-of-place.ts'
import { numberOf, rowNumbers, typedNumber } from './sheet-numbers.ts'
import type { SheetScope } from './sheet-steps.ts'
import { emptySeat, seatPlaces, type SeatTexts, type Sheet } from './sheet.ts'

/** The diameters of a seat that read as numbers, in the order of the planes. */
export function seatReadings(texts: SeatTexts): SeatReading[] {
  return seatPlaces.flatMap((place) => {
    const diameterMm = typedNumber(texts[place], rowNumbers.diameterMm)
    if (diameterMm === null) return []
    return [{ plane: Number(place[0]), direction: place[1] === 'x' ? 'x' : 'y', diameterMm }]
  })
}

export function seatTexts(readings: readonly SeatReading[]): SeatTexts {
  const typed = readings.map(({ plane, direction, diameterMm }) => [`${plane}${direction}`, String(diameterMm)])
  return { ...emptySeat(), ...(Object.fromEntries(typed) as Partial<SeatTexts>) }
}

/** What the readings of a shaft say, as far as they go. */
export type ShaftAnswer =
  | { kind: 'none' }
  | { kind: 'checked'; check: ShaftCheck }
  | { kind: 'no-row'; sentence: string }
  | { kind: 'far'; sentence: string }

/** The shaft under a sleeve against h9 of its nominal diameter. R-SHAFT. */
export function shaftAnswer(
  sheet: Sheet,
  scope: Pick<SheetScope, 'sleeve'>,
  nominalMm: number | null,
  taper: BearingType['taper'],
): ShaftAnswer {
  const readings = seatReadings(sheet.shaft).map(({ diameterMm }) => diameterMm)
  if (!scope.sleeve || nominalMm === null || readings.length === 0) return { kind: 'none' }
  try {
    const check = checkShaft(nominalMm, readings, taper ?? '1:12')
    return check.found ? { kind: 'checked', check } : { kind: 'no-row', sentence: check.reason }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return {
      kind: 'far',
      sentence: `The reading is far from the nominal ${nominalMm} mm: is it the right shaft? Readings are in mm; one in inches is typed with its unit, such as 3.5405 in.`,
    }
  }
}

/** Whether the sizes near a reading are both inch and metric, so that a person has to say which. R-INCH. */
export function inchQuestion(sheet: Sheet, scope: Pick<SheetScope, 'sleeve'>) {
  const shaftMm = seatReadings(sheet.shaft)[0]?.diameterMm
  if (!scope.sleeve || shaftMm === undefined || shaftMm < 5 || shaftMm > 1000) return null
  const answer: InchAnswer = inchOrMetric(shaftMm)
  return answer.kind === 'ask' ? answer : null
}

/** The rings that the measured seat width gives; null while it is not measured. R-RING. */
export function ringPlan(
  sheet: Sheet,
  position: Pick<PositionOverview['position'], 'locating'>,
  bearingWidthMm: number,
): RingPlan | null {
  const seatWidthMm = numberOf(sheet, 'housingSeatWidthMm')
  if (seatWidthMm === null) return null
  try {
    const oneRing = sheet.ringCount === '1'
    return locatingRings({ seatWidthMm, bearingWidthMm, locating: position.locating, oneRing })
  } catch (error) {
    if (error instanceof InputError) return null
    throw error
  }
}
