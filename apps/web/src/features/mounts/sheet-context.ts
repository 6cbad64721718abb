import { createContext, use } from 'react'
import type { SiteSettings } from '@shaftbook/contract/access'
import type { MountPlan } from '@shaftbook/contract/mount-plans'
import type { MountRecord } from '@shaftbook/contract/mounts'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import type { KitAnswer } from '@shaftbook/contract/judge-kit-check'
import type { BearingType, PlaceLimits } from './band-of-place.ts'
import type { Suggestions } from './service-faults.ts'
import type { SheetJudgement } from './sheet-judgement.ts'
import type { Ask } from './sheet-asks.ts'
import type { SheetScope, StepKey } from './sheet-steps.ts'
import type { Sheet } from './sheet.ts'
import type { StepState } from './step-state.ts'

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
  /** The plan that the mount is made for. */
  plan: MountPlan | null
  settings: SiteSettings
  type: BearingType
  limits: PlaceLimits
  judged: SheetJudgement
  asks: readonly Ask[]
  states: Record<StepKey, StepState>
  /** What the rules say of each line of the kit that was compared, by its id. */
  kitAnswers: ReadonlyMap<string, KitAnswer>
}

const SheetContext = createContext<SheetState | null>(null)

export const SheetProvider = SheetContext.Provider

/** The mount sheet that is being filled in. */
export function useSheet(): SheetState {
  const state = use(SheetContext)
  if (!state) throw new Error('useSheet needs a mount sheet above it')
  return state
}
