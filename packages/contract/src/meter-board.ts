import { z } from 'zod'
import { Id, Instant, RunHours, Text, page, pageQuery, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { everyone } from './roles.ts'
import { sitePath } from './site-path.ts'

/** An hour meter as a person who reads it meets it: at its machine, with what it showed last. */
export const MeterBoardItem = z.object({
  id: Id,
  name: z.string(),
  machineId: Id,
  machineTag: z.string(),
  machineName: z.string(),
  areaName: z.string(),
  rolloverAtHours: z.number().nullable(),
  lastReadAt: Instant.nullable(),
  lastShownHours: RunHours.nullable().meta({ description: 'After an exchange: where the new meter starts' }),
})
export type MeterBoardItem = z.infer<typeof MeterBoardItem>

export const listMeterBoard = endpoint({
  name: 'list-meter-board',
  method: 'GET',
  path: sitePath('meter-board'),
  access: everyone,
  summary: 'Hour meters by the tag of their machine, each with what it showed last',
  params: siteParams,
  query: z.object({ ...pageQuery, search: Text.optional() }),
  replies: { 200: page(MeterBoardItem) },
})
