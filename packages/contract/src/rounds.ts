import { z } from 'zod'
import { Day, Flagged, Id, Instant, Name, Text, page, pageQuery, recordParams, rowShape, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { GreaseEntry, GreaseTask } from './grease-plans.ts'
import { DueState } from './greasing.ts'
import { engineering, everyone } from './roles.ts'
import { sitePath } from './site-path.ts'

/** A place that a round stops at, with what its plan asks for and how it stands. */
const stopPlace = {
  positionId: Id,
  task: GreaseTask,
  tag: z.string(),
  positionName: z.string(),
  machineId: Id,
  machineTag: z.string(),
  machineName: z.string(),
  areaId: Id,
  areaName: z.string(),
  planId: Id.nullable(),
  greaseId: Id.nullable(),
  greaseName: z.string().nullable(),
  doseG: z.number().nullable(),
  entry: GreaseEntry.nullable(),
  dueState: DueState.nullable(),
  dueOn: Day.nullable(),
  lastGreasedAt: Instant.nullable(),
}
export const ProposedStop = z.object(stopPlace)
export type ProposedStop = z.infer<typeof ProposedStop>
export const RoundStop = z.object({ id: Id, ...stopPlace })
export type RoundStop = z.infer<typeof RoundStop>

const roundShape = { name: Name, note: Text.default('') }
export const NewStops = z
  .array(z.object({ id: Id, positionId: Id, task: GreaseTask.default('regrease') }))
  .min(1, 'takes at least one stop')
  .max(200)
export const RoundSummary = z.object({
  ...rowShape,
  name: z.string(),
  note: z.string(),
  retired: z.boolean(),
  stops: z.int(),
  due: z.int().meta({ description: 'Stops that are due, overdue, missed or never greased' }),
  lastWalkedAt: Instant.nullable(),
})
export type RoundSummary = z.infer<typeof RoundSummary>
export const Round = z
  .object({ ...rowShape, name: z.string(), note: z.string(), retired: z.boolean(), stops: z.array(RoundStop) })
  .meta({ id: 'Round' })
export type Round = z.infer<typeof Round>
export const NewRound = z.object({ id: Id, ...roundShape, stops: NewStops })
export type NewRound = z.infer<typeof NewRound>
export const RoundChange = z.strictObject({
  name: Name.optional(),
  note: Text.optional(),
  retired: z.boolean().optional(),
  stops: NewStops.optional(),
})

/** Ids, one after the other with commas between. */
const Ids = z
  .string()
  .max(4000)
  .transform((text) => text.split(','))
  .pipe(z.array(Id).max(100))
export const proposeStops = endpoint({
  name: 'propose-round-stops',
  method: 'GET',
  path: sitePath('round-proposals'),
  access: everyone,
  summary: 'What a round could stop at, in walking order: areas, then machines, then positions by tag',
  params: siteParams,
  query: z.object({
    areaIds: Ids.optional().meta({ description: 'Only these areas, with commas between' }),
    greaseIds: Ids.optional().meta({ description: 'Only these greases, with commas between' }),
    search: Text.optional(),
    dueOnly: Flagged.optional().meta({ description: 'true: only what is due soon or longer' }),
    limit: z.coerce.number().int().min(1).max(200).default(200),
  }),
  replies: { 200: z.object({ items: z.array(ProposedStop), more: z.boolean() }) },
})
export const listRounds = endpoint({
  name: 'list-rounds',
  method: 'GET',
  path: sitePath('rounds'),
  access: everyone,
  summary: 'Rounds by name',
  params: siteParams,
  query: z.object({ ...pageQuery, retired: Flagged.optional() }),
  replies: { 200: page(RoundSummary) },
})
export const readRound = endpoint({
  name: 'read-round',
  method: 'GET',
  path: sitePath('rounds/:id'),
  access: everyone,
  summary: 'A round with its stops in order, and how each stands today',
  params: recordParams,
  replies: { 200: Round },
})
export const createRound = endpoint({
  name: 'create-round',
  method: 'POST',
  path: sitePath('rounds'),
  access: engineering,
  summary: 'Make a round of stops in the order given',
  params: siteParams,
  body: NewRound,
  replies: { 201: Round },
})
export const changeRound = endpoint({
  name: 'change-round',
  method: 'PATCH',
  path: sitePath('rounds/:id'),
  access: engineering,
  summary: 'Change a round; stops, when given, replace the old ones',
  params: recordParams,
  body: RoundChange,
  ifMatch: true,
  replies: { 200: Round },
})
