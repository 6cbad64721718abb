import type { PositionOverview } from '@shaftbook/contract/position-views'
import { z } from 'zod'
import type { BearingType } from './band-of-place.ts'
import type { Method } from './sheet.ts'

/** The steps of a mount in the order of the work. */
export const stepKeys = [
  'safe',
  'strip',
  'seat',
  'kit',
  'bench',
  'drive',
  'lock',
  'rings',
  'grease',
  'cap',
  'turn',
  'start',
  'sign',
] as const
export type StepKey = (typeof stepKeys)[number]
export const StepName = z.enum(stepKeys)

/** What the sheet is for: a new mount, going on with a draft, or correcting a signed record. */
export type SheetPurpose = 'new' | 'draft' | 'correction'

/** What does not apply is not asked. */
export interface SheetScope {
  purpose: SheetPurpose
  steps: readonly StepKey[]
  /** A bearing comes out, so the sheet says how it ended. */
  removal: boolean
  /** The bearing is entered; a correction leaves it as it is. */
  bearing: boolean
  /** The bearing is driven up a taper. */
  taper: boolean
  /** A sleeve goes under it: its shaft is checked against h9. */
  sleeve: boolean
  /** It is the sleeve that moves, not the ring. */
  withdrawal: boolean
  /** The shaft has a diameter to measure; a tapered journal has none. */
  shaftDiameters: boolean
  /** A nut holds it. */
  nut: boolean
  /** The position locates the shaft, so rings go in. */
  rings: boolean
  /** Feelers can read the clearance of this kind of bearing. */
  clearance: boolean
  /** Grease is filled in; a sealed bearing brings its own. */
  grease: boolean
  /** The kit of the position has lines to compare with. */
  kit: boolean
}

/** Kinds whose rollers leave a gap that a blade can enter. */
const feelerKinds: readonly BearingType['kind'][] = ['spherical-roller', 'cylindrical-roller', 'other']

/**
 * What a sheet asks at a position, and its steps in the order of the work.
 * @param method what tells when to stop; a mount by feel has no readings
 */
export function sheetScope(
  purpose: SheetPurpose,
  place: Pick<PositionOverview, 'position' | 'fitment' | 'kit'>,
  type: BearingType,
  method: Method = 'feeler',
): SheetScope {
  const { seat, locating } = place.position
  const scope = {
    purpose,
    removal: purpose !== 'correction' && place.fitment !== null,
    bearing: purpose !== 'correction',
    taper: seat !== 'cylindrical' && type.taper !== null,
    sleeve: seat === 'adapter-sleeve' || seat === 'withdrawal-sleeve',
    withdrawal: seat === 'withdrawal-sleeve',
    shaftDiameters: seat !== 'tapered-journal',
    nut: seat !== 'cylindrical',
    rings: locating,
    clearance: feelerKinds.includes(type.kind) && method !== 'by-feel',
    grease: !type.sealed,
    kit: (place.kit?.lines.length ?? 0) > 0,
  }
  return { ...scope, steps: stepKeys.filter((step) => applies(step, scope)) }
}

function applies(step: StepKey, scope: Omit<SheetScope, 'steps'>): boolean {
  if (step === 'strip') return scope.removal
  if (step === 'kit') return scope.kit || scope.nut
  if (step === 'lock') return scope.nut
  if (step === 'grease') return scope.grease
  return true
}

/** A step's name as it stands in the list and over the screen. */
export function stepTitle(step: StepKey, scope: SheetScope): string {
  if (step === 'safe') return scope.purpose === 'correction' ? 'The job' : 'Make safe'
  if (step === 'bench') return scope.clearance ? 'Bearing and bench clearance' : 'The new bearing'
  if (step === 'drive') return scope.taper ? 'Drive up' : 'Fit the bearing'
  if (step === 'rings') return scope.rings ? 'Rings and seals' : 'Seals'
  return titles[step]
}

const titles = {
  strip: 'Strip and look',
  seat: 'Shaft and housing',
  kit: 'Kit check',
  lock: 'Lock the nut',
  grease: 'Fill with grease',
  cap: 'Cap and bolts',
  turn: 'Turn by hand',
  start: 'Start-up check',
  sign: 'Sign',
} as const
