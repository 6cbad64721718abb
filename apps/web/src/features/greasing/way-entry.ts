import { planGaps, type GreaseTask, type GreasePlan, type NewGreasePlan } from '@shaftbook/contract/grease-plans'
import type { z } from 'zod'
import { parseNumber } from '../../lib/length-units.ts'

/** What a form gives a position besides regreasing by gun: a task, or sealed for life. */
export type OtherWay = Exclude<GreaseTask, 'regrease'> | 'sealed'

/** A plan of another way, as it is typed; which fields count depends on the way. */
export interface WayEntry {
  greaseId: string
  doseG: string
  oil: string
  days: string
  months: string
  hours: string
  reason: string
  reviewOn: string
}

type WayField = 'grease' | 'oil' | 'days' | 'months' | 'hours'

interface Way {
  readonly way: GreasePlan['way']
  readonly fields: readonly WayField[]
  /** What is usual, as a start. */
  readonly start: Partial<WayEntry>
}

export const otherWays: Readonly<Record<OtherWay, Way>> = {
  refill: { way: 'automatic', fields: ['grease', 'months'], start: { months: '6' } },
  'check-system': { way: 'central', fields: ['days', 'hours'], start: { days: '30' } },
  'check-oil': { way: 'oil', fields: ['oil', 'days', 'hours'], start: { days: '7' } },
  'change-oil': { way: 'oil', fields: ['oil', 'months', 'hours'], start: { months: '12' } },
  'turn-shaft': { way: null, fields: ['days'], start: { days: '14' } },
  sealed: { way: 'sealed', fields: [], start: {} },
}

/** A form begins with what the plan in force says, or with what is usual. */
export function startOfWay(way: OtherWay, plan: GreasePlan | undefined): WayEntry {
  const text = (value: number | null): string => (value === null ? '' : String(value))
  const empty = { greaseId: '', doseG: '', oil: '', days: '', months: '', hours: '', reason: '', reviewOn: '' }
  if (!plan) return { ...empty, ...otherWays[way].start }
  return {
    ...empty,
    greaseId: plan.greaseId ?? '',
    doseG: text(plan.doseG),
    oil: plan.oil,
    days: text(plan.calendarDays),
    months: text(plan.calendarMonths),
    hours: text(plan.intervalHours),
  }
}

/** The plan as the service takes it; a field that does not belong to the way is left out. */
export function wayBody(id: string, positionId: string, way: OtherWay, entry: WayEntry): z.input<typeof NewGreasePlan> {
  const { fields, way: lubricatedBy } = otherWays[way]
  const number = (field: WayField, text: string): number | null =>
    fields.includes(field) ? (parseNumber(text) ?? null) : null
  return {
    id,
    positionId,
    way: lubricatedBy,
    task: way === 'sealed' ? null : way,
    greaseId: fields.includes('grease') && entry.greaseId !== '' ? entry.greaseId : null,
    doseG: number('grease', entry.doseG),
    oil: fields.includes('oil') ? entry.oil.trim() : '',
    calendarDays: number('days', entry.days),
    calendarMonths: number('months', entry.months),
    intervalHours: number('hours', entry.hours),
    source: 'by-hand',
    reason: entry.reason.trim(),
    reviewOn: entry.reviewOn === '' ? null : entry.reviewOn,
  }
}

/** What each field of the service is called in the form. */
const fieldOf: Partial<Record<string, keyof WayEntry>> = {
  calendarDays: 'days',
  calendarMonths: 'months',
  intervalHours: 'hours',
}
export function inForm(path: string): string {
  return fieldOf[path] ?? path
}

const limits = {
  doseG: [0.1, 20_000, false, 'Enter 0.1 to 20 000 g.'],
  days: [1, 1000, true, 'Enter 1 to 1000 whole days.'],
  months: [1, 60, true, 'Enter 1 to 60 whole months.'],
  hours: [1, 100_000, false, 'Enter 1 to 100 000 run hours.'],
} as const

/** What has to be put right before it can be sent. */
export function wayFaults(way: OtherWay, entry: WayEntry): Partial<Record<string, string>> {
  const { fields } = otherWays[way]
  const faults: Partial<Record<string, string>> = {}
  const plan = wayBody('', '', way, entry) as NewGreasePlan
  for (const [path, message] of planGaps(plan)) faults[inForm(path)] ??= `${message}.`
  for (const [field, [min, max, whole, sentence]] of Object.entries(limits)) {
    const belongs = fields.includes((field === 'doseG' ? 'grease' : field) as WayField)
    const text = entry[field as keyof typeof limits]
    if (!belongs || text.trim() === '') continue
    const value = parseNumber(text)
    const fits = value !== undefined && value >= min && value <= max && (!whole || Number.isInteger(value))
    if (!fits) faults[field] = sentence
  }
  if (way === 'sealed' && entry.reason.trim().length < 3)
    faults['reason'] = 'Say how you know that it is sealed for life.'
  return faults
}
