import { z } from 'zod'
import { Day, Id, Instant, Micrometres, Name, Reason, RunHours, Text, page, pageQuery } from './common.ts'
import { recordParams, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { MountDecision, NewMountDecision } from './mount-decisions.ts'
import { seenShape, sheetShape } from './mount-sheet.ts'
import { Judgement, ResidualVerdict, Verdict } from './judgement.ts'
import { ClearanceClass, Taper } from './register-tables.ts'
import { hoursShape, RemovalDraft, removalShape } from './removals.ts'
import { engineering, everyone, shaftWork } from './roles.ts'
import { sitePath } from './site-path.ts'

export const ReadingUnit = z.enum(['mm', 'um', 'in', 'thou'])

/** When a clearance was felt: as found before anything was touched, on the bench, at a step of the drive-up, at the end. */
export const ReadingMoment = z.enum(['found', 'bench', 'step', 'mounted'])

/**
 * A reading as it was typed; the service reads the number, comma or point. `confirmed` says that an unlikely one is meant.
 * Judged are the readings of bench and mounted that are not struck.
 */
export const NewReading = z.object({
  moment: ReadingMoment,
  step: z
    .int()
    .min(1)
    .max(40)
    .nullable()
    .default(null)
    .meta({ description: 'The number of its drive step; null elsewhere' }),
  row: z.enum(['A', 'B']),
  typedValue: z.string().trim().min(1, 'Enter the reading').max(20),
  typedUnit: ReadingUnit,
  confirmed: z.boolean().default(false),
  struck: z.boolean().default(false).meta({ description: 'It was mistyped: it stays to be read and counts no more' }),
})
export type NewReading = z.infer<typeof NewReading>
export const Reading = z.object({
  moment: ReadingMoment,
  step: z.int().nullable(),
  row: z.enum(['A', 'B']),
  number: z.int(),
  clearanceUm: Micrometres,
  typedValue: z.string(),
  typedUnit: ReadingUnit,
  struck: z.boolean(),
})
export type Reading = z.infer<typeof Reading>

const readings = z.array(NewReading).max(400)

/** The bearing that goes on: one that is registered already, or a new one with a client-made id. */
export const MountedBearing = z.object({
  id: Id,
  bearingTypeId: Id,
  serial: Name.nullable().default(null),
  lot: Text.nullable().default(null),
  maker: Text.nullable().default(null),
  packedOn: Day.nullable().default(null),
})

export const NewMountRecord = z.object({
  id: Id,
  positionId: Id,
  bearing: MountedBearing,
  ...sheetShape,
  ...hoursShape,
  readings,
  planId: Id.nullable().default(null).meta({ description: 'The planned mount that this is; its signature closes it' }),
  ...seenShape,
  sign: z.boolean().meta({ description: 'true: sign at once; false: keep as a draft' }),
  removal: RemovalDraft.nullable()
    .default(null)
    .meta({ description: 'Why the bearing that is there leaves; needed whole to sign where one is fitted' }),
})
export type NewMountRecord = z.infer<typeof NewMountRecord>
const { id: _id, positionId: _positionId, sign: _sign, ...draftShape } = NewMountRecord.shape
const changeId = Id.optional().meta({
  description: 'The same change sent again under this id is answered with the record',
})
export const MountDraftChange = z.object({
  ...draftShape,
  sign: z.boolean().default(false).meta({ description: 'true: sign what is sent here in the same act' }),
  changeId,
})
export type MountDraftChange = z.infer<typeof MountDraftChange>
export const MountSignature = z.object({
  ...seenShape,
  changeId,
  removal: z
    .object(removalShape)
    .nullable()
    .default(null)
    .meta({ description: 'Why the bearing that is there leaves; without it, what the draft says counts' }),
})
export const MountCorrection = z.object({
  id: Id,
  correctionReason: Reason,
  ...sheetShape,
  meterShowsHours: hoursShape.meterShowsHours.meta({
    description: 'With no reading and no reason, the hours stay as the record before has them',
  }),
  noHoursReason: hoursShape.noHoursReason,
  readings,
})

export const MountRecord = z
  .object({
    id: Id,
    version: z.int(),
    positionId: Id,
    tag: z.string(),
    machineName: z.string(),
    fitmentId: Id.nullable(),
    bearing: z.object({
      ...MountedBearing.shape,
      designation: z.string(),
      boreMm: z.number(),
      taper: Taper.nullable(),
    }),
    clearanceClass: ClearanceClass.nullable(),
    ...sheetShape,
    runHours: RunHours.nullable(),
    noHoursReason: z.string().nullable(),
    removal: RemovalDraft.nullable().meta({
      description: 'What a draft says of the bearing that leaves; null once it is signed, as a removal of its own',
    }),
    readings: z.array(Reading),
    planId: Id.nullable(),
    judgement: Judgement,
    decisions: z.array(MountDecision).meta({ description: 'What the engineer decided on this record, newest first' }),
    signedAt: Instant.nullable(),
    signedBy: z.string().nullable(),
    correctsId: Id.nullable(),
    correctedById: Id.nullable(),
    correctionReason: z.string().nullable(),
    createdAt: Instant,
  })
  .meta({ id: 'MountRecord' })
export type MountRecord = z.infer<typeof MountRecord>

export const MountListItem = z.object({
  id: Id,
  positionId: Id,
  tag: z.string(),
  machineName: z.string(),
  areaName: z.string(),
  designation: z.string(),
  mountedAt: Instant,
  fitter: z.string(),
  reductionUm: Micrometres.nullable(),
  bandMinUm: Micrometres.nullable(),
  bandMaxUm: Micrometres.nullable(),
  verdict: Verdict.nullable(),
  residual: ResidualVerdict.nullable(),
  signed: z.boolean(),
  correctsId: Id.nullable(),
})
export type MountListItem = z.infer<typeof MountListItem>

export const listMounts = endpoint({
  name: 'list-mount-records',
  method: 'GET',
  path: sitePath('mount-records'),
  access: everyone,
  summary: 'Mount records, newest first; corrected ones are left out unless asked for',
  params: siteParams,
  query: z.object({
    ...pageQuery,
    positionId: Id.optional(),
    areaId: Id.optional(),
    verdict: Verdict.optional(),
    state: z.enum(['draft', 'signed']).optional(),
    search: Text.optional(),
  }),
  replies: { 200: page(MountListItem) },
})
export const readMount = endpoint({
  name: 'read-mount-record',
  method: 'GET',
  path: sitePath('mount-records/:id'),
  access: everyone,
  summary: 'One mount record with readings and judgement',
  params: recordParams,
  replies: { 200: MountRecord },
})
export const createMount = endpoint({
  name: 'create-mount-record',
  method: 'POST',
  path: sitePath('mount-records'),
  access: shaftWork,
  summary: 'Log a mount, as a draft or signed at once',
  params: siteParams,
  body: NewMountRecord,
  replies: { 201: MountRecord },
})
export const changeMountDraft = endpoint({
  name: 'change-mount-record',
  method: 'PATCH',
  path: sitePath('mount-records/:id'),
  access: shaftWork,
  summary: 'Replace what a draft says; a signed record is refused',
  params: recordParams,
  body: MountDraftChange,
  ifMatch: true,
  replies: { 200: MountRecord },
})
export const signMount = endpoint({
  name: 'sign-mount-record',
  method: 'POST',
  path: sitePath('mount-records/:id/signature'),
  access: shaftWork,
  summary: 'Sign a draft: closes the old fitment, opens the new one, sets verdict and flags',
  params: recordParams,
  body: MountSignature,
  ifMatch: true,
  replies: { 200: MountRecord },
})
export const decideMount = endpoint({
  name: 'decide-mount-record',
  method: 'POST',
  path: sitePath('mount-records/:id/decisions'),
  access: engineering,
  summary: 'Decide on a mount that is not proven inside its limits; its verdict stays as it is',
  params: recordParams,
  body: NewMountDecision,
  replies: { 201: MountRecord },
})
export const correctMount = endpoint({
  name: 'correct-mount-record',
  method: 'POST',
  path: sitePath('mount-records/:id/corrections'),
  access: shaftWork,
  summary: 'Correct a signed record of the same mount by a further one',
  params: recordParams,
  body: MountCorrection,
  replies: { 201: MountRecord },
})
