import { z } from 'zod'
import { Id, Name, Text, page, pageQuery, recordParams, rowShape, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { PartKind } from './register-tables.ts'
import { everyone, storesWork } from './roles.ts'
import { sitePath } from './site-path.ts'

export const KitNeed = z.enum(['must', 'may'])

const newLine = {
  partId: Id,
  quantity: z.number().positive().max(100_000),
  unit: z.string().trim().min(1).max(12).default('pc'),
  need: KitNeed.default('must'),
  reason: Text.default(''),
}
export const KitLine = z.object({
  id: Id,
  lineNumber: z.int(),
  ...newLine,
  partNumber: z.string(),
  designation: z.string(),
  kind: PartKind,
  description: z.string(),
  bin: z.string().nullable(),
})
export type KitLine = z.infer<typeof KitLine>

export const KitSummary = z.object({
  ...rowShape,
  name: z.string(),
  note: z.string(),
  lines: z.int(),
  positions: z.int(),
})
export const Kit = z
  .object({ ...rowShape, name: z.string(), note: z.string(), lines: z.array(KitLine) })
  .meta({ id: 'Kit' })
export type Kit = z.infer<typeof Kit>

const lines = z.array(z.object({ id: Id, ...newLine })).max(60)
export const NewKit = z.object({ id: Id, name: Name, note: Text.default(''), lines })
export const KitChange = z.strictObject({ name: Name.optional(), note: Text.optional(), lines: lines.optional() })

export const listKits = endpoint({
  name: 'list-kits',
  method: 'GET',
  path: sitePath('kits'),
  access: everyone,
  summary: 'A page of kits by name',
  params: siteParams,
  query: z.object({ ...pageQuery, search: Text.optional() }),
  replies: { 200: page(KitSummary) },
})
export const readKit = endpoint({
  name: 'read-kit',
  method: 'GET',
  path: sitePath('kits/:id'),
  access: everyone,
  summary: 'A kit with its lines in order',
  params: recordParams,
  replies: { 200: Kit },
})
export const createKit = endpoint({
  name: 'create-kit',
  method: 'POST',
  path: sitePath('kits'),
  access: storesWork,
  summary: 'Enter a kit with its lines',
  params: siteParams,
  body: NewKit,
  replies: { 201: Kit },
})
export const changeKit = endpoint({
  name: 'change-kit',
  method: 'PATCH',
  path: sitePath('kits/:id'),
  access: storesWork,
  summary: 'Change a kit; lines, when given, replace the old ones',
  params: recordParams,
  body: KitChange,
  ifMatch: true,
  replies: { 200: Kit },
})

/** A position that a part belongs to, through the kit of the position. */
export const PartUse = z.object({
  positionId: Id,
  tag: z.string(),
  machineName: z.string(),
  areaName: z.string(),
  kitId: Id,
  kitName: z.string(),
  quantity: z.number(),
  unit: z.string(),
  need: KitNeed,
})
export type PartUse = z.infer<typeof PartUse>
export const listPartUses = endpoint({
  name: 'list-part-uses',
  method: 'GET',
  path: sitePath('parts/:id/positions'),
  access: everyone,
  summary: 'The positions that a part fits, by tag',
  params: recordParams,
  query: z.object(pageQuery),
  replies: { 200: page(PartUse) },
})
