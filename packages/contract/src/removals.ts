import { z } from 'zod'
import { Id, Instant, Name, Reason, RunHours, Text, page, pageQuery, recordParams, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { everyone, shaftWork } from './roles.ts'
import { sitePath } from './site-path.ts'

export const EndKind = z.enum(['failed', 'not-failed', 'lost'])
export type EndKind = z.infer<typeof EndKind>

/** Why and how a bearing left. `modeClause` is a clause of ISO 15243, e.g. `5.1.3`. */
export const removalShape = {
  endKind: EndKind,
  modeClause: z
    .string()
    .regex(/^5(\.\d){1,3}$/)
    .nullable()
    .default(null),
  cause: Text.nullable().default(null),
  detection: Text.nullable().default(null),
  evidence: Text.default(''),
  observer: Name,
}
/** What is told so far of how a bearing leaves; it is made whole before it is signed. */
export const RemovalDraft = z.object({
  ...removalShape,
  endKind: EndKind.nullable().default(null),
  observer: Text.default(''),
})
export type RemovalDraft = z.infer<typeof RemovalDraft>

/** The hour reading at the event: what the meter shows, or why there is none. */
export const hoursShape = {
  meterShowsHours: RunHours.nullable().default(null),
  noHoursReason: Reason.nullable().default(null),
}

export const Removal = z
  .object({
    id: Id,
    fitmentId: Id,
    positionId: Id,
    removedAt: Instant,
    runHours: RunHours.nullable(),
    noHoursReason: z.string().nullable(),
    endKind: EndKind,
    modeClause: z.string().nullable(),
    modeTerm: z.string().nullable(),
    cause: z.string().nullable(),
    detection: z.string().nullable(),
    evidence: z.string(),
    observer: z.string(),
    signedAt: Instant,
    signedBy: z.string(),
    correctsId: Id.nullable(),
    correctionReason: z.string().nullable(),
  })
  .meta({ id: 'Removal' })
export type Removal = z.infer<typeof Removal>

export const NewRemoval = z.object({
  id: Id,
  positionId: Id,
  removedAt: Instant,
  leavingFitmentId: Id.optional().meta({
    description: 'The stay that was open when the removal was begun; where another one is open today it is refused',
  }),
  ...removalShape,
  ...hoursShape,
})
export type NewRemoval = z.infer<typeof NewRemoval>
export const RemovalCorrection = z.object({ id: Id, correctionReason: Reason, ...removalShape })

export const RemovalListItem = z.object({
  ...Removal.shape,
  tag: z.string(),
  machineName: z.string(),
  designation: z.string(),
  lifeHours: z.number().nullable(),
  hoursSource: z.enum(['meter', 'estimate', 'none']),
})
export const listRemovals = endpoint({
  name: 'list-removals',
  method: 'GET',
  path: sitePath('removals'),
  access: everyone,
  summary: 'Removals that count, newest first: the failure history of the site or of a position',
  params: siteParams,
  query: z.object({
    ...pageQuery,
    positionId: Id.optional(),
    endKind: EndKind.optional(),
    modeClause: Text.optional(),
  }),
  replies: { 200: page(RemovalListItem) },
})
export const readRemoval = endpoint({
  name: 'read-removal',
  method: 'GET',
  path: sitePath('removals/:id'),
  access: everyone,
  summary: 'One removal',
  params: recordParams,
  replies: { 200: Removal },
})
export const createRemoval = endpoint({
  name: 'create-removal',
  method: 'POST',
  path: sitePath('removals'),
  access: shaftWork,
  summary: 'Sign that the bearing left its position; closes the fitment',
  params: siteParams,
  body: NewRemoval,
  replies: { 201: Removal },
})
export const correctRemoval = endpoint({
  name: 'correct-removal',
  method: 'POST',
  path: sitePath('removals/:id/corrections'),
  access: shaftWork,
  summary: 'Correct what a signed removal says, by a further record',
  params: recordParams,
  body: RemovalCorrection,
  replies: { 201: Removal },
})
