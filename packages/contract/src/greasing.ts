import { z } from 'zod'
import { Day, Grams, Id, Instant, Reason, RunHours, Text, page, pageQuery, recordParams, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { GreaseEntry, GreaseTask, GreaseWay } from './grease-plans.ts'
import { everyone, shaftWork } from './roles.ts'
import { sitePath } from './site-path.ts'

export const DueState = z.enum(['never-greased', 'not-due', 'due-soon', 'due', 'overdue', 'missed'])
export type DueState = z.infer<typeof DueState>
export const WindowResult = z.enum(['met', 'early', 'late', 'missed', 'wrong-amount', 'no-window'])
export type WindowResult = z.infer<typeof WindowResult>

export const Greasing = z
  .object({
    id: Id,
    positionId: Id,
    tag: z.string(),
    planId: Id.nullable(),
    task: GreaseTask,
    kind: z.enum(['regreasing', 'initial-fill']).nullable().meta({ description: 'null: another task than regreasing' }),
    greasedAt: Instant,
    runHours: RunHours.nullable(),
    greaseId: Id.nullable().meta({ description: 'null: a check, an oil change or turning' }),
    greaseName: z.string().nullable(),
    doseG: z.number().nullable(),
    plannedDoseG: z.number().nullable(),
    windowResult: WindowResult.meta({ description: 'Worked out again whenever something earlier comes to light' }),
    dueOn: Day.nullable().meta({ description: 'When it was due, counted from the one before' }),
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
  doseG: Grams.nullable().default(null).meta({ description: 'null: a check, an oil change or turning' }),
  meterShowsHours: RunHours.nullable().default(null),
  note: Text.default(''),
}
const doseWanted = 'Regreasing and refilling have a dose in grams, other tasks have none'
export const NewGreasing = z
  .object({
    id: Id,
    positionId: Id,
    task: GreaseTask.default('regrease'),
    kind: z.enum(['regreasing', 'initial-fill']).default('regreasing'),
    ...greasingShape,
  })
  .refine(({ task, doseG }) => takesGrease(task) === (doseG !== null), { path: ['doseG'], message: doseWanted })
  .refine(({ task, greaseId }) => takesGrease(task) || greaseId === null, { path: ['greaseId'], message: doseWanted })
/** Whether a task puts grease in. */
export function takesGrease(task: GreaseTask): boolean {
  return task === 'regrease' || task === 'refill'
}
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
  query: z.object({
    ...pageQuery,
    positionId: Id.optional(),
    task: GreaseTask.optional(),
    windowResult: WindowResult.optional(),
  }),
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
  task: GreaseTask,
  way: GreaseWay.nullable(),
  greaseId: Id.nullable(),
  greaseName: z.string().nullable(),
  oil: z.string(),
  doseG: z.number().nullable(),
  entry: GreaseEntry.nullable(),
  intervalHours: z.number().nullable(),
  calendarMonths: z.int().nullable(),
  calendarDays: z.int().nullable(),
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
  query: z.object({
    ...pageQuery,
    areaId: Id.optional(),
    task: GreaseTask.optional(),
    state: DueState.optional(),
    search: Text.optional(),
  }),
  replies: { 200: page(DueItem) },
})
