import { checkDose } from '@shaftbook/bearing/grease'
import { nextOfTask, type LastDone } from '@shaftbook/bearing/due-task'
import type { GreasingPlan, NextDue, Usage } from '@shaftbook/bearing/due'
import type { SiteSettings } from '@shaftbook/contract/access'
import type { GreaseTask } from '@shaftbook/contract/grease-plans'
import type { WindowResult } from '@shaftbook/contract/greasing'

export interface WindowQuestion {
  readonly task: GreaseTask
  readonly plan: GreasingPlan
  /** Planned when it was signed; null where the task has no dose. */
  readonly plannedDoseG: number | null
  readonly doseG: number | null
  /** The one before, of the same bearing. */
  readonly last: LastDone
  /** Day, hours and usage at the greasing. */
  readonly usage: Usage
  readonly settings: Pick<SiteSettings, 'greasingWindowPercent' | 'missedBeyondPercent'>
}

export interface Window {
  readonly result: WindowResult
  readonly due: NextDue
}

/** How a greasing met its plan: the amount first, then when it was due by its task's rule. R-COMPL, R-CAL. */
export function windowOf({ task, plan, plannedDoseG, doseG, last, usage, settings }: WindowQuestion): Window {
  const due = nextOfTask(task, plan, last, usage, {
    windowPercent: settings.greasingWindowPercent,
    missedPercent: settings.missedBeyondPercent,
  })
  if (doseG !== null && plannedDoseG !== null && !checkDose(doseG, plannedDoseG).counts) {
    return { result: 'wrong-amount', due }
  }
  const results = {
    'never-greased': 'no-window',
    'not-due': 'early',
    'due-soon': 'met',
    due: 'met',
    overdue: 'late',
    missed: 'missed',
  } as const
  return { result: results[due.state], due }
}
