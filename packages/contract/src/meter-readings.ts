import { z } from 'zod'
import { Id, Instant, Reason, RunHours, Text, page, pageQuery, recordParams, siteParams } from './common.ts'
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
/** A line of a batch: which meter it tells of, by id, by the tag of its machine or by its own name, and what it shows. */
export const MeterLine = z
  .object({
    id: Id,
    meterId: Id.optional(),
    machineTag: Text.optional(),
    meterName: Text.optional(),
    kind: z.enum(['reading', 'exchange']).default('reading'),
    readAt: Instant,
    shownHours: RunHours,
    newMeterShowsHours: RunHours.nullable().default(null),
  })
  .meta({ id: 'MeterLine' })
export type MeterLine = z.output<typeof MeterLine>

export const MeterLineAnswer = z
  .object({
    id: Id,
    outcome: z.enum(['taken', 'refused']),
    totalHours: RunHours.nullable().meta({ description: "The machine's hours over all exchanges and rollovers" }),
    code: z.string().nullable(),
    field: z.string().nullable(),
    sentence: z.string().nullable().meta({ description: 'Why it was refused and what to do' }),
  })
  .meta({ id: 'MeterLineAnswer' })
export type MeterLineAnswer = z.infer<typeof MeterLineAnswer>

export const batchMeterReadings = endpoint({
  name: 'batch-meter-readings',
  method: 'POST',
  path: sitePath('meter-readings/batch'),
  access: shaftWork,
  summary: 'Enter up to 500 readings of many meters; each line is taken or refused by itself, and due dates follow',
  params: siteParams,
  body: z.object({ readings: z.array(MeterLine).min(1).max(500) }),
  replies: {
    200: z.object({
      taken: z.int(),
      refused: z.int(),
      lines: z.array(MeterLineAnswer).meta({ description: 'In the order of the request' }),
    }),
  },
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
