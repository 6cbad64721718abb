import { z } from 'zod'
import { Id, Instant, Reason, Text, page, pageQuery, recordParams, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { everyone, shaftWork } from './roles.ts'
import { sitePath } from './site-path.ts'

/** As the person reads it from the machine's own table (ISO 20816): A new, B long-term, C short-term only, D damaging. */
export const VibrationZone = z.enum(['A', 'B', 'C', 'D'])

const observed = {
  temperatureC: z.number().min(-60).max(250).nullable().default(null),
  vibrationMmS: z.number().min(0).max(500).nullable().default(null).meta({ description: 'Velocity, r.m.s.' }),
  zone: VibrationZone.nullable().default(null),
  reliefClosed: z
    .boolean()
    .nullable()
    .default(null)
    .meta({ description: 'The relief was closed again after greasing' }),
  oldGreaseSeen: z.boolean().nullable().default(null).meta({ description: 'Old grease came out' }),
  note: Text.default(''),
}
export const Observation = z
  .object({
    id: Id,
    positionId: Id,
    tag: z.string(),
    greasingId: Id.nullable().meta({ description: 'The work that it was made at' }),
    observedAt: Instant,
    ...observed,
    signedAt: Instant,
    signedBy: z.string(),
    withdrawnAt: Instant.nullable(),
    withdrawnReason: z.string().nullable(),
  })
  .meta({ id: 'Observation' })
export type Observation = z.infer<typeof Observation>

export const NewObservation = z
  .object({ id: Id, positionId: Id, greasingId: Id.nullable().default(null), observedAt: Instant, ...observed })
  .refine(
    ({ temperatureC, vibrationMmS, zone, reliefClosed, oldGreaseSeen, note }) =>
      note !== '' || [temperatureC, vibrationMmS, zone, reliefClosed, oldGreaseSeen].some((value) => value !== null),
    { path: ['note'], message: 'Say what you saw: a temperature, a vibration, or a few words' },
  )
export type NewObservation = z.output<typeof NewObservation>

export const listObservations = endpoint({
  name: 'list-observations',
  method: 'GET',
  path: sitePath('observations'),
  access: everyone,
  summary: 'What was observed, newest first, withdrawn ones too',
  params: siteParams,
  query: z.object({ ...pageQuery, positionId: Id.optional(), greasingId: Id.optional() }),
  replies: { 200: page(Observation) },
})
export const readObservation = endpoint({
  name: 'read-observation',
  method: 'GET',
  path: sitePath('observations/:id'),
  access: everyone,
  summary: 'One observation',
  params: recordParams,
  replies: { 200: Observation },
})
export const createObservation = endpoint({
  name: 'create-observation',
  method: 'POST',
  path: sitePath('observations'),
  access: shaftWork,
  summary: 'Sign what was observed at a position; a rise against its own history raises a flag',
  params: siteParams,
  body: NewObservation,
  replies: { 201: Observation },
})
export const withdrawObservation = endpoint({
  name: 'withdraw-observation',
  method: 'POST',
  path: sitePath('observations/:id/withdrawal'),
  access: shaftWork,
  summary: 'Take an observation back, with the reason: it stays to be read and counts no more',
  params: recordParams,
  body: z.object({ reason: Reason }),
  replies: { 200: Observation },
})
