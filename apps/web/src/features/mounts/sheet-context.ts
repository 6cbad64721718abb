import { createContext, use } from 'react'
import type { MountRecord } from '@shaftbook/contract/mounts'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import type { BearingType, PlaceLimits } from './band-of-place.ts'
import type { Suggestions } from './sheet-faults.ts'
import type { SheetJudgement } from './sheet-judgement.ts'
import type { Sheet } from './sheet.ts'

/** What the sheet is for: a new mount, going on with a draft, or correcting a signed record. */
export type SheetPurpose = 'new' | 'draft' | 'correction'

/** What does not apply is not asked. */
export interface SheetScope {
  purpose: SheetPurpose
  /** A bearing comes out, so the sheet says how it ended. */
  removal: boolean
  /** The bearing is entered; a correction leaves it as it is. */
  bearing: boolean
  /** The bearing is driven up a taper. */
  taper: boolean
  /** A sleeve goes under it. */
  sleeve: boolean
  /** A nut holds it. */
  nut: boolean
  /** The position locates the shaft, so rings go in. */
  rings: boolean
}

export interface SheetState {
  sheet: Sheet
  change: (part: Partial<Sheet>) => void
  /** What is wrong with a field, by its key. */
  faultOf: (key: string) => string | undefined
  /** What the service says may have been meant with a reading that it refused, by its key. */
  suggestionsOf: (key: string) => Suggestions[string] | undefined
  scope: SheetScope
  place: PositionOverview
  /** The draft that is gone on with, or the signed record that is corrected. */
  record: MountRecord | null
  type: BearingType
  limits: PlaceLimits
  judged: SheetJudgement
}

const SheetContext = createContext<SheetState | null>(null)

export const SheetProvider = SheetContext.Provider

/** The mount sheet that is being filled in. */
export function useSheet(): SheetState {
  const state = use(SheetContext)
  if (!state) throw new Error('useSheet needs a mount sheet above it')
  return state
}

export function sheetScope(purpose: SheetPurpose, place: PositionOverview, type: BearingType): SheetScope {
  const { seat, locating } = place.position
  return {
    purpose,
    removal: purpose !== 'correction' && place.fitment !== null,
    bearing: purpose !== 'correction',
    taper: seat !== 'cylindrical' && type.taper !== null,
    sleeve: seat === 'adapter-sleeve' || seat === 'withdrawal-sleeve',
    nut: seat !== 'cylindrical',
    rings: locating,
  }
}
