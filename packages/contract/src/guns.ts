import { z } from 'zod'
import { Day, Id, Instant, Name, Text, recordParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { registerEndpoints } from './register.ts'
import { shaftWork } from './roles.ts'
import { sitePath } from './site-path.ts'

/** What one stroke of a gun delivers, weighed over several strokes. R-DOSE. */
export const GramsPerStroke = z.number().min(0.1).max(10)

/** The grease guns of the site, each with what it is loaded with. */
export const guns = registerEndpoints({
  plural: 'guns',
  noun: 'grease gun',
  fields: z.object({
    name: Name,
    gramsPerStroke: GramsPerStroke,
    calibratedOn: Day.nullable().default(null),
    strokesWeighed: z.int().min(1).max(1000).nullable().default(null),
    greaseId: Id.nullable().default(null).meta({ description: 'What it is loaded with' }),
    note: Text.default(''),
  }),
  filters: z.object({ greaseId: Id.optional(), search: Text.optional() }),
  sorts: ['name'],
  writers: shaftWork,
})
export type Gun = z.infer<typeof guns.Row>
export const GunLoad = z.object({ id: Id, greaseId: Id, loadedAt: Instant })
export const loadGun = endpoint({
  name: 'load-gun',
  method: 'POST',
  path: sitePath('guns/:id/loads'),
  access: shaftWork,
  summary: 'Say what a gun is loaded with from now on',
  params: recordParams,
  body: GunLoad,
  replies: { 201: guns.Row },
})
