import { z } from 'zod'
import {
  Day,
  Grams,
  Id,
  Instant,
  Reason,
  RunHours,
  Text,
  page,
  pageQuery,
  recordParams,
  rowShape,
  siteParams,
} from './common.ts'
import { endpoint } from './endpoint.ts'
import { engineering, everyone, shaftWork } from './roles.ts'
import { sitePath } from './site-path.ts'

export const GreaseEntry = z.enum(['side', 'outer-ring-groove'])
export const DueState = z.enum(['never-greased', 'not-due', 'due-soon', 'due', 'overdue', 'missed'])
export type DueState = z.infer<typeof DueState>
export const WindowResult = z.enum(['met', 'early', 'late', 'missed', 'wrong-amount', 'no-window'])
export type WindowResult = z.infer<typeof WindowResult>

const planShape = {
  greaseId: Id,
  entry: GreaseEntry,
  doseG: Grams,
  intervalHours: z.number().min(1).max(100_000),
  calendarMonths: z.int().min(1).max(60).default(12),
  source: z.enum(['computed', 'by-hand']),
  reason: Text.default(''),
  duty: z.record(z.string(), z.unknown()).default({}),
}
export const GreasePlan = z
  .object({ ...rowShape, positionId: Id, ...planShape, greaseName: z.string(), endedAt: Instant.nullable() })
  .meta({ id: 'GreasePlan' })
export type GreasePlan = z.infer<typeof GreasePlan>
export const NewGreasePlan = z.object({ id: Id, positionId: Id, ...planShape })

export const listGreasePlans = endpoint({
  name: 'list-grease-plans',
  method: 'GET',
  path: sitePath('grease-plans'),
  access: everyone,
  summary: 'Grease plans, newest first; the current one of a position is the one that has not ended',
  params: siteParams,
  query: z.object({ ...pageQuery, positionId: Id.optional() }),
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
  summary: 'Give a position a new plan; the one before ends',
  params: siteParams,
  body: NewGreasePlan,
  replies: { 201: GreasePlan },
})

export const Greasing = z
  .object({
    id: Id,
    positionId: Id,
    tag: z.string(),
    planId: Id.nullable(),
    kind: z.enum(['regreasing', 'initial-fill']),
    greasedAt: Instant,
    runHours: RunHours.nullable(),
    greaseId: Id,
    greaseName: z.string(),
    doseG: z.number(),
    plannedDoseG: z.number().nullable(),
    windowResult: WindowResult,
    note: z.string(),
    signedAt: Instant,
    signedBy: z.string(),
    correctsId: Id.nullable(),
    correctionReason: z.string().nullable(),
    withdrawn: z.boolean(),
  })
  .meta({ id: 'Greasing' })
export type Greasing = z.infer<typeof Greasing>

const greasingShape = {
  greasedAt: Instant,
  greaseId: Id.nullable().default(null).meta({ description: 'null: the grease of the plan' }),
  doseG: Grams,
  meterShowsHours: RunHours.nullable().default(null),
  note: Text.default(''),
}
export const NewGreasing = z.object({
  id: Id,
  positionId: Id,
  kind: z.enum(['regreasing', 'initial-fill']).default('regreasing'),
  ...greasingShape,
})
export type NewGreasing = z.infer<typeof NewGreasing>
export const GreasingCorrection = z.object({
  id: Id,
  correctionReason: Reason,
  withdrawn: z.boolean().default(false).meta({ description: 'true: the greasing did not happen at this position' }),
  ...greasingShape,
})

export const listGreasings = endpoint({
  name: 'list-greasings',
  method: 'GET',
  path: sitePath('greasings'),
  access: everyone,
  summary: 'Greasings that count, newest first',
  params: siteParams,
  query: z.object({ ...pageQuery, positionId: Id.optional(), windowResult: WindowResult.optional() }),
  replies: { 200: page(Greasing) },
})
export const readGreasing = endpoint({
  name: 'read-greasing',
  method: 'GET',
  path: sitePath('greasings/:id'),
  access: everyone,
  summary: 'One greasing',
  params: recordParams,
  replies: { 200: Greasing },
})
export const createGreasing = endpoint({
  name: 'create-greasing',
  method: 'POST',
  path: sitePath('greasings'),
  access: shaftWork,
  summary: 'Sign a greasing; next due date and flags follow at once',
  params: siteParams,
  body: NewGreasing,
  replies: { 201: Greasing },
})
export const correctGreasing = endpoint({
  name: 'correct-greasing',
  method: 'POST',
  path: sitePath('greasings/:id/corrections'),
  access: shaftWork,
  summary: 'Correct or withdraw a signed greasing by a further record',
  params: recordParams,
  body: GreasingCorrection,
  replies: { 201: Greasing },
})

/** What a position is due, as it was worked out when a record was last written. */
export const DueItem = z.object({
  planId: Id,
  positionId: Id,
  tag: z.string(),
  positionName: z.string(),
  machineName: z.string(),
  areaId: Id,
  areaName: z.string(),
  greaseId: Id,
  greaseName: z.string(),
  doseG: z.number(),
  entry: GreaseEntry,
  intervalHours: z.number(),
  calendarMonths: z.int(),
  lastGreasedAt: Instant.nullable(),
  dueOn: Day,
  dueRunHours: z.number().nullable(),
  dueBy: z.enum(['hours', 'calendar', 'never-greased']),
  estimated: z.boolean(),
  state: DueState,
  meterLastTotalHours: z.number().nullable(),
})
export type DueItem = z.infer<typeof DueItem>
export const listDue = endpoint({
  name: 'list-due-greasings',
  method: 'GET',
  path: sitePath('due-greasings'),
  access: everyone,
  summary: 'What is due, the longest due first',
  params: siteParams,
  query: z.object({ ...pageQuery, areaId: Id.optional(), state: DueState.optional(), search: Text.optional() }),
  replies: { 200: page(DueItem) },
})
