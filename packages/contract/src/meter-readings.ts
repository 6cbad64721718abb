import { z } from 'zod'
import { Id, Instant, Reason, RunHours, page, pageQuery, recordParams, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { everyone, shaftWork } from './roles.ts'
import { sitePath } from './site-path.ts'

export const MeterReading = z
  .object({
    id: Id,
    meterId: Id,
    kind: z.enum(['reading', 'exchange']),
    readAt: Instant,
    shownHours: RunHours,
    newMeterShowsHours: RunHours.nullable(),
    totalHours: RunHours,
    readBy: z.string(),
    correctsId: Id.nullable(),
    correctionReason: z.string().nullable(),
  })
  .meta({ id: 'MeterReading' })
export type MeterReading = z.infer<typeof MeterReading>

export const NewMeterReading = z
  .object({
    id: Id,
    meterId: Id,
    kind: z.enum(['reading', 'exchange']).default('reading'),
    readAt: Instant,
    shownHours: RunHours.meta({ description: 'What the display shows; at an exchange: the old meter at its end' }),
    newMeterShowsHours: RunHours.nullable()
      .default(null)
      .meta({ description: 'At an exchange: where the new one starts' }),
  })
  .refine((reading) => (reading.kind === 'exchange') === (reading.newMeterShowsHours !== null), {
    path: ['newMeterShowsHours'],
    message: 'Say where the new meter starts when the meter was exchanged, and only then',
  })
export type NewMeterReading = z.infer<typeof NewMeterReading>

export const listMeterReadings = endpoint({
  name: 'list-meter-readings',
  method: 'GET',
  path: sitePath('meter-readings'),
  access: everyone,
  summary: 'Readings that count, newest first',
  params: siteParams,
  query: z.object({ ...pageQuery, meterId: Id.optional() }),
  replies: { 200: page(MeterReading) },
})
export const createMeterReading = endpoint({
  name: 'create-meter-reading',
  method: 'POST',
  path: sitePath('meter-readings'),
  access: shaftWork,
  summary: "Enter what a meter shows; the due dates of the machine's positions follow",
  params: siteParams,
  body: NewMeterReading,
  replies: { 201: MeterReading },
})
export const correctMeterReading = endpoint({
  name: 'correct-meter-reading',
  method: 'POST',
  path: sitePath('meter-readings/:id/corrections'),
  access: shaftWork,
  summary: 'Correct a reading by a further record',
  params: recordParams,
  body: z.object({ id: Id, correctionReason: Reason, shownHours: RunHours }),
  replies: { 201: MeterReading },
})
