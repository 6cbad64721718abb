import { z } from 'zod'
import {
  Day,
  Flagged,
  Grams,
  Id,
  Instant,
  Reason,
  Text,
  page,
  pageQuery,
  recordParams,
  rowShape,
  siteParams,
} from './common.ts'
import { endpoint } from './endpoint.ts'
import { engineering, everyone } from './roles.ts'
import { sitePath } from './site-path.ts'

export const GreaseEntry = z.enum(['side', 'outer-ring-groove'])
export type GreaseEntry = z.infer<typeof GreaseEntry>

/** What is to be done at a position again and again; each has its own plan. */
export const GreaseTask = z.enum(['regrease', 'refill', 'check-system', 'check-oil', 'change-oil', 'turn-shaft'])
export type GreaseTask = z.infer<typeof GreaseTask>
/** How a position is lubricated. */
export const GreaseWay = z.enum(['gun', 'sealed', 'automatic', 'central', 'oil'])
export type GreaseWay = z.infer<typeof GreaseWay>

const planText = {
  source: z.enum(['computed', 'by-hand']),
  reason: Text.default(''),
  reviewOn: Day.nullable().default(null).meta({ description: 'Of a plan set by hand: the day to look at it again' }),
  duty: z.record(z.string(), z.unknown()).default({}),
}
const planAmounts = {
  way: GreaseWay.nullable().meta({ description: 'null: turning a shaft is no way of lubrication' }),
  task: GreaseTask.nullable().meta({ description: 'null: sealed for life has nothing to do' }),
  greaseId: Id.nullable(),
  oil: Text.meta({ description: 'Oil and amount, in words' }),
  entry: GreaseEntry.nullable(),
  doseG: Grams.nullable().meta({ description: 'At a refill: what the lubricator holds' }),
  intervalHours: z.number().min(1).max(100_000).nullable(),
  calendarMonths: z.int().min(1).max(60).nullable().meta({ description: 'At a refill: months until it is empty' }),
  calendarDays: z.int().min(1).max(1000).nullable(),
}
const planState = {
  ...rowShape,
  positionId: Id,
  tag: z.string(),
  greaseName: z.string().nullable(),
  endedAt: Instant.nullable(),
  endedReason: z.string().nullable(),
}
export const GreasePlan = z.object({ ...planState, ...planAmounts, ...planText }).meta({ id: 'GreasePlan' })
export type GreasePlan = z.infer<typeof GreasePlan>

/** The plan of regreasing by gun, which says all of it. */
export const GunPlan = GreasePlan.extend({
  way: z.literal('gun'),
  task: z.literal('regrease'),
  greaseId: Id,
  greaseName: z.string(),
  entry: GreaseEntry,
  doseG: Grams,
  intervalHours: z.number().min(1).max(100_000),
  calendarMonths: z.int().min(1).max(60),
}).meta({ id: 'GunPlan' })
export type GunPlan = z.infer<typeof GunPlan>
export function isGunPlan(plan: GreasePlan): plan is GunPlan {
  return plan.task === 'regrease'
}

export const NewGreasePlan = z
  .object({
    id: Id,
    positionId: Id,
    way: planAmounts.way.default('gun'),
    task: planAmounts.task.default('regrease'),
    greaseId: planAmounts.greaseId.default(null),
    oil: planAmounts.oil.default(''),
    entry: planAmounts.entry.default(null),
    doseG: planAmounts.doseG.default(null),
    intervalHours: planAmounts.intervalHours.default(null),
    calendarMonths: planAmounts.calendarMonths
      .optional()
      .meta({ description: 'Left out at regreasing by gun: 12 months' }),
    calendarDays: planAmounts.calendarDays.default(null),
    ...planText,
  })
  .superRefine((plan, context) => {
    for (const [path, message] of planGaps(plan)) context.addIssue({ code: 'custom', path: [path], message })
  })
export type NewGreasePlan = z.output<typeof NewGreasePlan>

type PlanOfTask = Pick<NewGreasePlan, keyof typeof planAmounts>

const waysOfTask = {
  regrease: 'gun',
  refill: 'automatic',
  'check-system': 'central',
  'check-oil': 'oil',
  'change-oil': 'oil',
  'turn-shaft': null,
} as const satisfies Record<GreaseTask, GreaseWay | null>

/** What a plan of its task lacks, each as the field and a sentence. */
export function planGaps(plan: PlanOfTask): [keyof PlanOfTask, string][] {
  const { way, task, greaseId, entry, doseG, intervalHours, calendarMonths, calendarDays } = plan
  if (task === null)
    return way === 'sealed' ? [] : [['task', 'Say what is to be done: only a sealed bearing has no task']]
  const gaps: [keyof PlanOfTask, string][] = []
  if (way !== waysOfTask[task]) gaps.push(['way', 'This task belongs to another way of lubrication'])
  const greased = task === 'regrease' || task === 'refill'
  if (greased && greaseId === null) gaps.push(['greaseId', 'Choose the grease'])
  if (greased && doseG === null) gaps.push(['doseG', 'Enter the amount in grams'])
  if (task === 'regrease' && entry === null) gaps.push(['entry', 'Say where the grease goes in'])
  if (task === 'regrease' && intervalHours === null) gaps.push(['intervalHours', 'Enter the interval in run hours'])
  if (task === 'refill' && calendarMonths == null) {
    gaps.push(['calendarMonths', 'Enter in how many months the lubricator is empty'])
  }
  if (task === 'turn-shaft' && calendarDays === null) gaps.push(['calendarDays', 'Enter every how many days'])
  if (!greased && intervalHours === null && calendarMonths == null && calendarDays === null) {
    gaps.push(['calendarDays', 'Enter every how many days, months or run hours'])
  }
  return gaps
}

export const listGreasePlans = endpoint({
  name: 'list-grease-plans',
  method: 'GET',
  path: sitePath('grease-plans'),
  access: everyone,
  summary: 'Grease plans, newest first; a position has one in force for each task',
  params: siteParams,
  query: z.object({
    ...pageQuery,
    positionId: Id.optional(),
    way: GreaseWay.optional(),
    current: Flagged.optional().meta({ description: 'true: only plans in force' }),
  }),
  replies: { 200: page(GreasePlan) },
})
export const readGreasePlan = endpoint({
  name: 'read-grease-plan',
  method: 'GET',
  path: sitePath('grease-plans/:id'),
  access: everyone,
  summary: 'One grease plan',
  params: recordParams,
  replies: { 200: GreasePlan },
})
export const createGreasePlan = endpoint({
  name: 'create-grease-plan',
  method: 'POST',
  path: sitePath('grease-plans'),
  access: engineering,
  summary: 'Give a position a new plan; the one before of the same task ends, and sealed ends all but turning',
  params: siteParams,
  body: NewGreasePlan,
  replies: { 201: GreasePlan },
})

export const endGreasePlan = endpoint({
  name: 'end-grease-plan',
  method: 'POST',
  path: sitePath('grease-plans/:id/end'),
  access: engineering,
  summary: 'End a plan without a new one',
  params: recordParams,
  body: z.object({ reason: Reason }),
  replies: { 200: GreasePlan },
})

export const PlanReview = z
  .object({
    id: Id,
    planId: Id,
    reason: z.string(),
    reviewOn: Day.nullable(),
    computedIntervalHours: z.number().nullable(),
    computedDoseG: z.number().nullable(),
    decidedAt: Instant,
    decidedBy: z.string(),
  })
  .meta({ id: 'PlanReview' })
export type PlanReview = z.infer<typeof PlanReview>
export const reviewGreasePlan = endpoint({
  name: 'review-grease-plan',
  method: 'POST',
  path: sitePath('grease-plans/:id/reviews'),
  access: engineering,
  summary: 'Keep a plan as it is, with the reason, though its duty has changed or its day of review came',
  params: recordParams,
  body: z.object({ id: Id, reason: Reason, reviewOn: Day.nullable().default(null) }),
  replies: { 201: PlanReview },
})
export const listPlanReviews = endpoint({
  name: 'list-plan-reviews',
  method: 'GET',
  path: sitePath('plan-reviews'),
  access: everyone,
  summary: 'Reviews of grease plans, newest first',
  params: siteParams,
  query: z.object({ ...pageQuery, planId: Id.optional() }),
  replies: { 200: page(PlanReview) },
})
