import type { GreaseTask } from '@shaftbook/contract/grease-plans'
import type { OldGrease, StopOutcome } from '@shaftbook/contract/round-walks'

export const taskWords: Readonly<Record<GreaseTask, string>> = {
  regrease: 'Grease by gun',
  refill: 'Refill the lubricator',
  'check-system': 'Check the central system',
  'check-oil': 'Check the oil',
  'change-oil': 'Change the oil',
  'turn-shaft': 'Turn the shaft',
}

export const oldGreaseWords: Readonly<Record<OldGrease, string>> = {
  none: 'None came out',
  'like-new': 'Like new',
  dark: 'Dark',
  hard: 'Hard or dry',
  milky: 'Milky, with water',
  metal: 'With metal in it',
}

export const outcomeWords: Readonly<Record<StopOutcome, string>> = {
  done: 'Done',
  checked: 'Only looked at',
  skipped: 'Skipped',
}

export const entryWords = {
  side: 'From the side of the housing',
  'outer-ring-groove': 'Through the groove of the outer ring',
} as const

export const skipReasons = [
  'Machine not safe to reach',
  'Nipple broken or missing',
  'No grease left',
  'Not found',
] as const

/** `3 stops`, `1 stop`. */
export function stopsText(count: number): string {
  return count === 1 ? '1 stop' : `${count} stops`
}
