import { clearanceRange } from '@shaftbook/bearing/clearance'
import { turnForTravel } from '@shaftbook/bearing/nut-turn'
import { locatingRings } from '@shaftbook/bearing/rings'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import type { Fact } from './blocks.ts'
import { bandLines } from './mount-paper-parts.ts'
import { micrometreRange, micrometres, plainNumber, siteRulesFirst } from './words.ts'

/** All that the blank sheet of a position is printed from. */
export interface BlankSheet {
  readonly place: PositionOverview
  readonly site: { readonly name: string; readonly timeZone: string }
  /** Axial travel that goes with the band, mm; null where its source gives none. */
  readonly driveUpMm: { readonly min: number; readonly max: number } | null
  /** What the cap bolts were tightened to the last time, N·m. */
  readonly lastTorqueNm: number | null
  /** Where the position is found in the book. */
  readonly address: string
  readonly printedAt: Date
}

/** The dangers of the work, and what comes first. */
export const cautions = [
  'CAUTION. Isolate every source of energy, lock, tag, prove it dead and try to start. Block shaft and rotor against turning and dropping.',
  'Lift with rated gear. Never strike hardened rings or nuts: chips. Oil under pressure goes through skin; leave the nut on while a taper is broken loose and stand clear of its axis.',
  'Gloves for hot rings; no flame, grinding or heater in dust without the permit.',
  siteRulesFirst,
].join(' ')

export function bearingFacts({ bearingType, position, fitment }: PositionOverview): Fact[] {
  const { boreMm, outsideDiameterMm, widthMm, taper, clearanceClass, massKg } = bearingType
  const size = [boreMm, outsideDiameterMm, widthMm].map(plainNumber).join(' × ')
  const range = clearanceRange(boreMm, taper === null ? 'cylindrical' : 'tapered', clearanceClass)
  const limits = range.found ? `, ${micrometreRange(range.range.minUm, range.range.maxUm)} on the bench` : ''
  return [
    { label: 'Type', value: bearingType.designation },
    { label: 'Size', value: `${size} mm, ${taper === null ? 'cylindrical bore' : `taper ${taper}`}` },
    { label: 'Class', value: `${clearanceClass}${limits}` },
    { label: 'Mass', value: massKg === null ? null : `${plainNumber(massKg)} kg` },
    { label: 'Seat', value: position.seat.replace('-', ' ') },
    { label: 'Fitted now', value: fitment && [fitment.designation, fitment.serial].filter(Boolean).join(', serial ') },
  ]
}

export function bandFacts({ place, driveUpMm }: BlankSheet): Fact[] {
  const { band, residualMinUm, bearingType, kit } = place
  const { taper } = bearingType
  const nut = kit?.lines.find(({ kind }) => kind === 'nut')?.designation ?? null
  const angle = driveUpMm && taper && nut ? anglesOf(driveUpMm, nut, taper) : null
  return [
    { label: 'Band', value: band ? bandLines(band)[0]!.replace(/^Band: r/, 'R') : 'none is known: ask the engineer' },
    {
      label: 'Must be left',
      value: residualMinUm === null ? 'ask the engineer' : `at least ${micrometres(residualMinUm)}`,
    },
    {
      label: 'Travel expected',
      value:
        driveUpMm &&
        `${plainNumber(driveUpMm.min)} to ${plainNumber(driveUpMm.max)} mm from a zero found by resistance`,
    },
    { label: 'Nut angle expected', value: angle && `${angle} with ${nut}` },
  ]
}

function anglesOf(travel: { min: number; max: number }, nutCode: string, taper: '1:12' | '1:30'): string | null {
  const [least, most] = [travel.min, travel.max].map((mm) => turnForTravel(mm, { nutCode }, taper))
  return least?.found && most?.found ? `${Math.round(least.angleDeg)} to ${Math.round(most.angleDeg)}°` : null
}

export function seatAndGreaseFacts({ place, lastTorqueNm }: BlankSheet): Fact[] {
  const { position, plan } = place
  const { shaftDiameterMm, shaftSystem, housingSeatWidthMm } = position
  return [
    {
      label: 'Shaft diameter',
      value: shaftDiameterMm === null ? 'measure it' : `${plainNumber(shaftDiameterMm)} mm, ${shaftSystem}`,
    },
    {
      label: 'Seat width',
      value:
        housingSeatWidthMm === null ? 'measure it' : `${plainNumber(housingSeatWidthMm)} mm in the book; measure it`,
    },
    { label: 'Locating rings', value: ringWords(place) },
    { label: 'Grease', value: plan ? plan.greaseName : 'no plan: ask the engineer' },
    {
      label: 'Regreasing dose',
      value: plan && `${plainNumber(plan.doseG)} g every ${plainNumber(plan.intervalHours)} run hours`,
    },
    {
      label: 'Cap bolts last time',
      value: lastTorqueNm === null ? null : `${plainNumber(lastTorqueNm)} N·m; the housing maker's value wins`,
    },
  ]
}

function ringWords({ position, bearingType }: PositionOverview): string {
  const { housingSeatWidthMm: seatWidthMm, locating } = position
  if (seatWidthMm === null) return locating ? 'two of (seat width less bearing width) / 2' : 'none'
  return locatingRings({ seatWidthMm, bearingWidthMm: bearingType.widthMm, locating }).sentence
}
