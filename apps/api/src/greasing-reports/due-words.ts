import type { DueWork } from './due-work.store.ts'

const taskWords: Readonly<Record<string, string>> = {
  regrease: 'grease',
  refill: 'refill the lubricator',
  'check-system': 'check the central system',
  'check-oil': 'check the oil',
  'change-oil': 'change the oil',
  'turn-shaft': 'turn the shaft',
}

/** What is to be done, such as "grease with 42 g Marl EP 2" or "check the oil". */
export function workWords({ task, doseG, greaseName }: Pick<DueWork, 'task' | 'doseG' | 'greaseName'>): string {
  const words = taskWords[task] ?? task
  if (doseG === null || greaseName === null) return words
  return `${words} with ${Math.round(doseG * 10) / 10} g ${greaseName}`
}

/** When it is due, with how sure that is: "due 2026-11-24, estimated", "never greased". */
export function dueWords({ state, dueOn, estimated }: Pick<DueWork, 'state' | 'dueOn' | 'estimated'>): string {
  if (state === 'never-greased') return 'never greased yet'
  return `due ${dueOn}${estimated ? ', estimated from average hours' : ''}`
}
