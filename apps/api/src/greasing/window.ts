import { nextGreasing, type LastGreasing, type Usage } from '@shaftbook/bearing/due'
import { checkDose } from '@shaftbook/bearing/grease'
import type { SiteSettings } from '@shaftbook/contract/access'
import type { WindowResult } from '@shaftbook/contract/greasing'

export interface WindowQuestion {
  readonly plan: { readonly intervalHours: number; readonly calendarMonths: number; readonly doseG: number } | null
  /** The greasing before, of the same bearing. */
  readonly last: LastGreasing | null
  /** Day, hours and usage at the greasing. */
  readonly usage: Usage
  readonly doseG: number
  readonly settings: Pick<SiteSettings, 'greasingWindowPercent' | 'missedBeyondPercent'>
}

/** How a greasing met its plan: the amount first, then when it was due by run hours or calendar. R-COMPL, R-CAL. */
export function windowResult({ plan, last, usage, doseG, settings }: WindowQuestion): WindowResult {
  if (!plan) return 'no-window'
  if (!checkDose(doseG, plan.doseG).counts) return 'wrong-amount'
  const { state } = nextGreasing(plan, last, usage, {
    windowPercent: settings.greasingWindowPercent,
    missedPercent: settings.missedBeyondPercent,
  })
  const results = {
    'never-greased': 'no-window',
    'not-due': 'early',
    'due-soon': 'met',
    due: 'met',
    overdue: 'late',
    missed: 'missed',
  } as const
  return results[state]
}
