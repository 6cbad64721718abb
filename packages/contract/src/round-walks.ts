import { z } from 'zod'
import { Grams, Id, Instant, RunHours, Text, page, pageQuery, recordParams, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { GreaseTask } from './grease-plans.ts'
import { GramsPerStroke } from './guns.ts'
import { everyone, shaftWork } from './roles.ts'
import { NewStops } from './rounds.ts'
import { sitePath } from './site-path.ts'

export const OldGrease = z.enum(['none', 'like-new', 'dark', 'hard', 'milky', 'metal'])
export type OldGrease = z.infer<typeof OldGrease>
export const StopOutcome = z.enum(['done', 'checked', 'skipped'])
export type StopOutcome = z.infer<typeof StopOutcome>

/** The dose at a stop: strokes of a gun with what a stroke weighs, or grams. */
const StopGreasing = z.object({
  id: Id.meta({ description: 'The id of the greasing that is signed with it' }),
  greaseId: Id.nullable().default(null).meta({ description: 'What went in; null: a task without grease' }),
  gunId: Id.nullable().default(null),
  strokes: z.int().min(1).max(10_000).nullable().default(null),
  gramsPerStroke: GramsPerStroke.nullable()
    .default(null)
    .meta({ description: 'What a stroke of the gun gave that day' }),
  doseG: Grams.nullable().default(null).meta({ description: 'Where it was not counted in strokes' }),
  meterShowsHours: RunHours.nullable().default(null),
})
const seenShape = {
  oldGrease: OldGrease.nullable().default(null),
  reliefClosed: z.boolean().nullable().default(null),
  temperatureC: z.number().min(-60).max(250).nullable().default(null),
  note: Text.default(''),
}
export const NewWalkStop = z.object({
  id: Id,
  stopId: Id,
  outcome: StopOutcome,
  doneAt: Instant,
  reason: Text.default('').meta({ description: 'Why it was skipped' }),
  greasing: StopGreasing.nullable().default(null),
  overdoseConfirmed: z.boolean().default(false).meta({ description: 'More than 1.5 times the plan, and meant so' }),
  extraReason: Text.default('').meta({ description: 'Why more than the plan went in' }),
  ...seenShape,
})
export type NewWalkStop = z.infer<typeof NewWalkStop>
export const WalkStop = z
  .object({
    id: Id,
    walkId: Id,
    stopId: Id,
    positionId: Id,
    task: GreaseTask,
    outcome: StopOutcome,
    doneAt: Instant,
    reason: z.string(),
    greasingId: Id.nullable(),
    doseG: z.number().nullable(),
    plannedDoseG: z.number().nullable(),
    gunName: z.string().nullable(),
    strokes: z.int().nullable(),
    overdoseConfirmed: z.boolean(),
    extraReason: z.string(),
    oldGrease: OldGrease.nullable(),
    reliefClosed: z.boolean().nullable(),
    temperatureC: z.number().nullable(),
    note: z.string(),
    signedBy: z.string(),
  })
  .meta({ id: 'WalkStop' })
export type WalkStop = z.infer<typeof WalkStop>

const WalkedStop = z.object({
  id: Id,
  positionId: Id,
  task: GreaseTask,
  tag: z.string(),
  machineName: z.string(),
  areaName: z.string(),
  result: WalkStop.nullable().meta({ description: 'null: left open' }),
})
const walkHead = {
  id: Id,
  roundId: Id,
  roundName: z.string(),
  startedAt: Instant,
  startedBy: z.string(),
  endedAt: Instant.nullable(),
  note: z.string(),
}
export const RoundWalk = z.object({ ...walkHead, stops: z.array(WalkedStop) }).meta({ id: 'RoundWalk' })
export type RoundWalk = z.infer<typeof RoundWalk>
export const RoundWalkSummary = z.object({
  ...walkHead,
  stops: z.int(),
  done: z.int(),
  checked: z.int(),
  skipped: z.int(),
})
export type RoundWalkSummary = z.infer<typeof RoundWalkSummary>
export const NewRoundWalk = z.object({
  id: Id,
  roundId: Id,
  startedAt: Instant,
  stops: NewStops.meta({ description: 'The stops of the round as the walk takes them along' }),
})
export type NewRoundWalk = z.infer<typeof NewRoundWalk>

export const listRoundWalks = endpoint({
  name: 'list-round-walks',
  method: 'GET',
  path: sitePath('round-walks'),
  access: everyone,
  summary: 'Walks of rounds, the latest first',
  params: siteParams,
  query: z.object({ ...pageQuery, roundId: Id.optional() }),
  replies: { 200: page(RoundWalkSummary) },
})
export const readRoundWalk = endpoint({
  name: 'read-round-walk',
  method: 'GET',
  path: sitePath('round-walks/:id'),
  access: everyone,
  summary: 'One walk: every stop with what was done there, or that it was left open',
  params: recordParams,
  replies: { 200: RoundWalk },
})
export const startRoundWalk = endpoint({
  name: 'start-round-walk',
  method: 'POST',
  path: sitePath('round-walks'),
  access: shaftWork,
  summary: 'Begin to walk a round',
  params: siteParams,
  body: NewRoundWalk,
  replies: { 201: RoundWalk },
})
export const recordWalkStop = endpoint({
  name: 'record-walk-stop',
  method: 'POST',
  path: sitePath('round-walks/:id/results'),
  access: shaftWork,
  summary: 'Sign what was done at a stop; a dose becomes a greasing at its own time, in the same act',
  params: recordParams,
  body: NewWalkStop,
  replies: { 201: WalkStop },
})
export const finishRoundWalk = endpoint({
  name: 'finish-round-walk',
  method: 'POST',
  path: sitePath('round-walks/:id/finish'),
  access: shaftWork,
  summary: 'End a walk; stops without a result are left open',
  params: recordParams,
  body: z.object({ id: Id, endedAt: Instant, note: Text.default('') }),
  replies: { 201: RoundWalk },
})
