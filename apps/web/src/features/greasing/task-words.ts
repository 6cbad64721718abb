import type { GreaseTask } from '@shaftbook/contract/grease-plans'

/** What is to be done, as a list says it. */
export const taskWords: Readonly<Record<GreaseTask, string>> = {
  regrease: 'Regrease by gun',
  refill: 'Refill the lubricator',
  'check-system': 'Check the central system',
  'check-oil': 'Check the oil level',
  'change-oil': 'Change the oil',
  'turn-shaft': 'Turn the shaft',
}

interface Every {
  readonly intervalHours: number | null
  readonly calendarMonths: number | null
  readonly calendarDays: number | null
}

/** "Every 2 000 run hours or 12 months". */
export function everyWords(plan: Every, count: (value: number) => string): string {
  const { intervalHours, calendarMonths, calendarDays } = plan
  const one = (value: number, noun: string): string => `${count(value)} ${noun}${value === 1 ? '' : 's'}`
  const parts = [
    intervalHours === null ? [] : one(intervalHours, 'run hour'),
    calendarMonths === null ? [] : one(calendarMonths, 'month'),
    calendarDays === null ? [] : one(calendarDays, 'day'),
  ].flat()
  return parts.length === 0 ? '' : `Every ${parts.join(' or ')}`
}

/** What a plan is called: its task, or that there is none. */
export function planTitle({ task }: { readonly task: GreaseTask | null }): string {
  return task === null ? 'Sealed for life' : taskWords[task]
}
