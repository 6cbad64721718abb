import { z } from 'zod'
import { Day, Flagged, Id, Instant, Reason, Text, page, pageQuery, recordParams, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { engineering, everyone, shaftWork } from './roles.ts'
import { sitePath } from './site-path.ts'

export const ChangeWay = z.enum(['strip', 'flush', 'lab-first'])
export const ChangeState = z.enum(['lab', 'strip', 'flush', 'finished', 'abandoned'])

export const GreaseChange = z
  .object({
    id: Id,
    version: z.int(),
    positionId: Id,
    tag: z.string(),
    fromGreaseId: Id,
    fromName: z.string(),
    toGreaseId: Id,
    toName: z.string(),
    way: ChangeWay,
    state: ChangeState.meta({ description: 'What it waits for; in lab the old grease is still the right one' }),
    reason: z.string(),
    dosesLeft: z.int().nullable().meta({ description: 'Flushing doses of the new grease that are still to be given' }),
    nextFlushOn: Day.nullable(),
    startedAt: Instant,
    startedBy: z.string(),
    endedAt: Instant.nullable(),
    note: z.string(),
  })
  .meta({ id: 'GreaseChange' })
export type GreaseChange = z.infer<typeof GreaseChange>

export const listGreaseChanges = endpoint({
  name: 'list-grease-changes',
  method: 'GET',
  path: sitePath('grease-changes'),
  access: everyone,
  summary: 'Change-overs from one grease to another, newest first',
  params: siteParams,
  query: z.object({ ...pageQuery, positionId: Id.optional(), open: Flagged.optional() }),
  replies: { 200: page(GreaseChange) },
})
export const readGreaseChange = endpoint({
  name: 'read-grease-change',
  method: 'GET',
  path: sitePath('grease-changes/:id'),
  access: everyone,
  summary: 'One change-over',
  params: recordParams,
  replies: { 200: GreaseChange },
})
export const startGreaseChange = endpoint({
  name: 'start-grease-change',
  method: 'POST',
  path: sitePath('grease-changes'),
  access: engineering,
  summary: 'Begin to change a position over to another grease; the compatibility of the two says in which ways',
  params: siteParams,
  body: z.object({ id: Id, positionId: Id, toGreaseId: Id, way: ChangeWay, reason: Reason }),
  replies: { 201: GreaseChange },
})
export const tellLabResult = endpoint({
  name: 'tell-lab-result',
  method: 'POST',
  path: sitePath('grease-changes/:id/lab-result'),
  access: engineering,
  summary: 'Tell what the mix test said: the two may be mixed (then it is flushed) or not (then it is stripped)',
  params: recordParams,
  body: z.object({ mixes: z.boolean(), note: Text.default('') }),
  replies: { 200: GreaseChange },
})
export const finishGreaseChange = endpoint({
  name: 'finish-grease-change',
  method: 'POST',
  path: sitePath('grease-changes/:id/finish'),
  access: shaftWork,
  summary: 'The bearing was stripped, cleaned and filled anew: the change-over is done',
  params: recordParams,
  body: z.object({ note: Text.default('') }),
  replies: { 200: GreaseChange },
})
export const abandonGreaseChange = endpoint({
  name: 'abandon-grease-change',
  method: 'POST',
  path: sitePath('grease-changes/:id/abandon'),
  access: engineering,
  summary: 'Give a change-over up before any of the new grease went in: the old plan is in force again',
  params: recordParams,
  body: z.object({ reason: Reason }),
  replies: { 200: GreaseChange },
})
