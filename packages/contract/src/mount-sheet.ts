import { z } from 'zod'
import { Id, Instant, Micrometres, Millimetres, Name, Reason, Text } from './common.ts'
import { MountDetails } from './mount-details.ts'

export const MountMethod = z.enum(['feeler', 'drive-up', 'by-feel'])

/** What is written down at the shaft, beside the readings. */
export const sheetShape = {
  mountedAt: Instant,
  fitter: Name,
  checker: Text.nullable().default(null),
  permitReference: Text.nullable().default(null),
  reason: Reason,
  method: MountMethod.default('feeler'),
  byFeelPerson: Text.nullable().default(null),
  sleeveCode: Text.nullable().default(null),
  nutCode: Text.nullable().default(null),
  lockingCode: Text.nullable().default(null),
  ringCount: z.int().min(0).max(2).nullable().default(null),
  ringWidthMm: Millimetres.nullable().default(null),
  shaftDiameterMm: Millimetres.nullable().default(null),
  temperatureC: z.number().min(-60).max(200).nullable().default(null),
  gauge: Text.nullable().default(null),
  zeroPointMethod: Text.nullable().default(null),
  driveUpMm: z.number().min(0).max(50).nullable().default(null),
  nutAngleDeg: z.number().min(0).max(3600).nullable().default(null),
  greaseId: Id.nullable().default(null),
  greaseBearingG: z.number().min(0).max(100_000).nullable().default(null),
  greaseHousingG: z.number().min(0).max(100_000).nullable().default(null),
  capBoltTorqueNm: z.number().positive().max(100_000).nullable().default(null),
  turnsFree: z.boolean().nullable().default(null),
  note: Text.default(''),
  outOfBandReason: Text.nullable().default(null),
  details: MountDetails.prefault({}),
}

export const MountSheet = z.object(sheetShape)

/** What whoever filled the sheet judged by. Where the book says something else today, a person decides before it is signed. */
export const MountSeen = z.object({
  bandMinUm: Micrometres.nullable(),
  bandMaxUm: Micrometres.nullable(),
  residualMinUm: Micrometres.nullable(),
  kitVersion: z.int().nullable(),
  kitId: Id.nullable()
    .optional()
    .meta({ description: 'Where it is given, another kit of the same version is told apart too' }),
})
export type MountSeen = z.infer<typeof MountSeen>

/** What a signature is compared with; what is not given is not compared. A draft that is kept is not compared. */
export const seenShape = {
  leavingFitmentId: Id.nullable()
    .optional()
    .meta({ description: 'The stay that was open at the position when the sheet was begun; null: none was' }),
  seen: MountSeen.optional(),
}
