import { z } from 'zod'
import { Id, Instant, Millimetres, Name, Reason, Text } from './common.ts'
import { PartKind, ShaftSystem } from './register-tables.ts'

/** Why a number of the sheet stays blank. A blank is never filled in by anybody else. */
export const BlankReason = z.enum(['not-measured', 'not-reachable', 'no-tool', 'does-not-apply', 'not-noted'])
export type BlankReason = z.infer<typeof BlankReason>

/** What was seen before anything was cleaned. */
const AsFound = z.object({
  ringCount: z.int().min(0).max(2).nullable().default(null),
  nutSide: Text.default(''),
  seals: Text.default(''),
  grease: Text.default(''),
  note: Text.default(''),
})

/** One diameter of the shaft seat or the housing bore: three planes, two directions at right angles. */
export const SeatReading = z.object({
  plane: z.int().min(1).max(3),
  direction: z.enum(['x', 'y']),
  diameterMm: Millimetres,
})
export type SeatReading = z.infer<typeof SeatReading>

export const SeatDecision = z.enum(['use-again', 'repaired', 'replaced', 'engineer-asked'])
export type SeatDecision = z.infer<typeof SeatDecision>

/** Shaft and housing as checked. R-SHAFT judges the shaft's diameters; R-RING takes the width of the housing seat. */
const SeatChecks = z.object({
  shaft: z.array(SeatReading).max(6).default([]),
  shaftSystem: ShaftSystem.nullable()
    .default(null)
    .meta({ description: 'R-INCH: the answer of the person who read the thread; never guessed' }),
  shaftSurface: z.enum(['clean', 'dressed', 'damaged']).nullable().default(null),
  shaftDecision: SeatDecision.nullable().default(null),
  housing: z.array(SeatReading).max(6).default([]),
  housingSeatWidthMm: Millimetres.nullable().default(null),
  softFootMm: z.number().min(0).max(20).nullable().default(null),
  housingDecision: SeatDecision.nullable().default(null),
  note: Text.default(''),
})

/** What lay on the bench for one line of the kit, or beside the kit (`kitLineId` null). */
export const KitCheckLine = z.object({
  kitLineId: Id.nullable().default(null),
  partId: Id.nullable().default(null),
  kind: PartKind,
  plannedCode: Text.default(''),
  found: z.enum(['as-planned', 'other', 'missing', 'not-needed']),
  foundCode: Text.default(''),
  quantity: z.number().min(0).max(100_000),
  unit: z.string().trim().min(1).max(12).default('pc'),
  reason: Text.default('').meta({ description: 'Needed where another part was taken, or one is missing' }),
})
export type KitCheckLine = z.infer<typeof KitCheckLine>

/** Travel and angle at one step of the drive-up; its clearances are readings of the moment `step` with this number. */
export const DriveStep = z.object({
  number: z.int().min(1).max(40),
  driveUpMm: z.number().min(0).max(50).nullable().default(null),
  nutAngleDeg: z.number().min(0).max(3600).nullable().default(null),
  struck: z.boolean().default(false).meta({ description: 'It was mistyped: it stays to be read and counts no more' }),
})
export type DriveStep = z.infer<typeof DriveStep>

/** How the nut was locked. R-TAB: it is only ever turned forward to the next slot. */
const Locking = z.object({
  forwardDeg: z.number().min(0).max(360).nullable().default(null),
  lockedWith: z.enum(['tab', 'clip', 'screw', 'other']).nullable().default(null),
  note: Text.default(''),
})

const Rings = z.object({
  placed: z.enum(['both-sides', 'nut-side', 'far-side']).nullable().default(null),
  seals: Text.default(''),
  sealsTurn: z.boolean().nullable().default(null),
})

/** Cap and its bolts. R-BOLT: tightened crosswise in steps; the torque reached is `capBoltTorqueNm`. */
const CapBolts = z.object({
  size: Text.nullable().default(null),
  propertyClass: Text.nullable().default(null),
  friction: z.enum(['dry', 'light-oil', 'moly-paste']).nullable().default(null),
  targetNm: z.number().positive().max(100_000).nullable().default(null),
  stepsDone: z.array(z.int().min(1).max(100)).max(6).default([]),
  marksMatch: z.boolean().nullable().default(null),
})

/** The first run. R-OVER and the trade's usual watch: it rises, settles and falls. */
export const StartUp = z.object({
  startedAt: Instant.nullable().default(null),
  readings: z
    .array(
      z.object({
        minutes: z.number().min(0).max(10_000),
        temperatureC: z.number().min(-60).max(300).nullable().default(null),
        vibrationMmS: z.number().min(0).max(200).nullable().default(null),
      }),
    )
    .max(20)
    .default([]),
  twinTemperatureC: z.number().min(-60).max(300).nullable().default(null),
  zone: z
    .enum(['A', 'B', 'C', 'D'])
    .nullable()
    .default(null)
    .meta({ description: 'ISO 20816 zone as the person reads it' }),
  lockChecked: z.boolean().nullable().default(null),
  notDoneReason: Reason.nullable().default(null),
  note: Text.default(''),
})

export type StartUp = z.infer<typeof StartUp>

/** More than a sheet has numbers. */
const mostBlanks = 100

/** Everything of a mount sheet that is read as a whole and never searched: kept beside the record's own columns. */
export const MountDetails = z.object({
  blanks: z
    .record(z.string().max(60), BlankReason)
    .refine((blanks) => Object.keys(blanks).length <= mostBlanks, `takes at most ${mostBlanks} fields`)
    .default({}),
  cautionsSeenBy: Name.nullable().default(null),
  asFound: AsFound.nullable().default(null),
  seat: SeatChecks.nullable().default(null),
  kitCheck: z.array(KitCheckLine).max(80).default([]),
  driveSteps: z.array(DriveStep).max(40).default([]),
  locking: Locking.nullable().default(null),
  rings: Rings.nullable().default(null),
  capBolts: CapBolts.nullable().default(null),
  startUp: StartUp.nullable().default(null),
})
export type MountDetails = z.infer<typeof MountDetails>
