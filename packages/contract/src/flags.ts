import { z } from 'zod'
import { Day, Id, Instant, Reason, Text, page, pageQuery, recordParams, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { ChangeState } from './grease-changes.ts'
import { GreaseTask } from './grease-plans.ts'
import { VibrationZone } from './observations.ts'
import { engineering, everyone } from './roles.ts'
import { sitePath } from './site-path.ts'

export const FlagKind = z.enum([
  'greasing-overdue',
  'never-greased',
  'task-overdue',
  'plan-review',
  'running-hot',
  'vibration-rise',
  'grease-change-open',
  'mount-under',
  'mount-over',
  'mount-not-proven',
  'residual-too-small',
  'residual-not-proven',
  'no-mount-record',
  'no-locating',
  'several-locating',
])
export type FlagKind = z.infer<typeof FlagKind>

/** Numbers that a flag's sentence needs; which of them are there depends on its kind. */
export const FlagFacts = z.object({
  task: GreaseTask.optional(),
  dutyChanged: z.boolean().optional(),
  observationId: Id.optional(),
  observedC: z.number().optional(),
  usualC: z.number().optional().meta({ description: 'Median of the earlier readings of this bearing' }),
  observedMmS: z.number().optional(),
  usualMmS: z.number().optional(),
  zone: VibrationZone.optional(),
  greaseChangeId: Id.optional(),
  changeState: ChangeState.optional(),
  fromGreaseName: z.string().optional(),
  toGreaseName: z.string().optional(),
  dosesLeft: z.int().optional(),
  proposedIntervalHours: z.number().optional().meta({ description: 'What the plan comes to by the register of today' }),
  proposedDoseG: z.number().optional(),
  reviewOn: Day.optional(),
  dueOn: Day.nullable().optional(),
  dueBy: z.enum(['hours', 'calendar', 'never-greased']).optional(),
  dueRunHours: z.number().nullable().optional(),
  runHours: z.number().nullable().optional(),
  intervalHours: z.number().optional(),
  estimated: z.boolean().optional(),
  doseG: z.number().optional(),
  greaseName: z.string().optional(),
  reductionUm: z.number().optional(),
  bandMinUm: z.number().optional(),
  bandMaxUm: z.number().optional(),
  bandSource: z.string().optional(),
  mountedMeanUm: z.number().optional(),
  residualMinUm: z.number().optional(),
  expandedUncertaintyUm: z.number().optional(),
  mountRecordId: Id.optional(),
  doAgainReason: z.string().optional().meta({ description: 'The engineer decided that the mount is done again' }),
  designation: z.string().optional(),
  locatingTags: z.array(z.string()).optional(),
})
export type FlagFacts = z.infer<typeof FlagFacts>

export const Flag = z
  .object({
    id: Id,
    version: z.int(),
    kind: FlagKind,
    positionId: Id.nullable(),
    shaftId: Id.nullable(),
    tag: z.string().nullable(),
    machineId: Id,
    machineTag: z.string(),
    machineName: z.string(),
    shaftName: z.string(),
    areaId: Id,
    areaName: z.string(),
    since: Instant,
    facts: FlagFacts,
    putOffUntil: Day.nullable(),
    putOffReason: z.string().nullable(),
    clearedAt: Instant.nullable(),
    clearedHow: z.string().nullable(),
  })
  .meta({ id: 'Flag' })
export type Flag = z.infer<typeof Flag>

export const listFlags = endpoint({
  name: 'list-flags',
  method: 'GET',
  path: sitePath('flags'),
  access: everyone,
  summary: 'Open flags, most pressing first',
  params: siteParams,
  query: z.object({
    ...pageQuery,
    kind: FlagKind.optional(),
    areaId: Id.optional(),
    positionId: Id.optional(),
    state: z.enum(['open', 'put-off', 'cleared']).default('open'),
    search: Text.optional(),
  }),
  replies: { 200: page(Flag) },
})
export const countFlags = endpoint({
  name: 'count-flags',
  method: 'GET',
  path: sitePath('flag-counts'),
  access: everyone,
  summary: 'Open flags by kind, put-off ones apart',
  params: siteParams,
  replies: {
    200: z.object({ open: z.int(), putOff: z.int(), byKind: z.array(z.object({ kind: FlagKind, open: z.int() })) }),
  },
})
export const readFlag = endpoint({
  name: 'read-flag',
  method: 'GET',
  path: sitePath('flags/:id'),
  access: everyone,
  summary: 'One flag, cleared or not',
  params: recordParams,
  replies: { 200: Flag },
})
export const putOffFlag = endpoint({
  name: 'put-off-flag',
  method: 'POST',
  path: sitePath('flags/:id/put-off'),
  access: engineering,
  summary: 'Put a flag off until a day, with the reason; it comes back',
  params: recordParams,
  body: z.object({ until: Day, reason: Reason }),
  ifMatch: true,
  replies: { 200: Flag },
})
