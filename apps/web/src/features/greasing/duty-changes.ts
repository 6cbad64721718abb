import { intervalLevels, type IntervalInput } from '@shaftbook/bearing/grease-interval'
import { formatCount } from '../../lib/format-count.ts'

export interface DutyChange {
  readonly what: string
  readonly before: string
  readonly today: string
}

type Said = Pick<IntervalInput, 'speedRpm' | 'boreMm' | 'levels'>

/** What the register says otherwise today than the duty that a plan was computed from. */
export function dutyChanges(before: Said, today: Said): DutyChange[] {
  const lines: [string, (duty: Said) => string][] = [
    ['Speed', ({ speedRpm }) => `${formatCount(speedRpm)} rev/min`],
    ['Bore', ({ boreMm }) => `${boreMm} mm`],
    ['Shaft', ({ levels }) => intervalLevels.shaft[levels.shaft].label],
    ['Bearing', ({ levels }) => intervalLevels.bearing[levels.bearing].label],
  ]
  return lines
    .map(([what, words]) => ({ what, before: words(before), today: words(today) }))
    .filter((line) => line.before !== line.today)
}
