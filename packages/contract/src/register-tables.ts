import { toNanometres } from '@shaftbook/bearing/units'
import { z } from 'zod'
import { Day, Flagged, Id, Instant, Millimetres, Name, Text, Micrometres } from './common.ts'
import { registerEndpoints } from './register.ts'
import { engineering, shaftWork, storesWork } from './roles.ts'

export const SeatKind = z.enum(['adapter-sleeve', 'withdrawal-sleeve', 'tapered-journal', 'cylindrical'])
export const ShaftSystem = z.enum(['metric', 'inch'])
export const ShaftAttitude = z.enum(['horizontal', 'inclined', 'vertical'])
export const BearingKind = z.enum([
  'spherical-roller',
  'self-aligning-ball',
  'deep-groove-ball',
  'cylindrical-roller',
  'tapered-roller',
  'angular-contact-ball',
  'other',
])
export const Taper = z.enum(['1:12', '1:30'])
export const ClearanceClass = z.enum(['C2', 'CN', 'C3', 'C4', 'C5'])
export const PartKind = z.enum([
  'bearing',
  'sleeve',
  'nut',
  'washer',
  'clip',
  'ring',
  'seal',
  'cover',
  'grease',
  'bolts',
  'consumable',
  'other',
])

export const areas = registerEndpoints({
  plural: 'areas',
  noun: 'area',
  fields: z.object({ code: Name, name: Name, walkingOrder: z.int().min(0).max(100_000).default(0) }),
  filters: z.object({}),
  sorts: ['walkingOrder', 'code', 'name'],
  writers: engineering,
})

export const machines = registerEndpoints({
  plural: 'machines',
  noun: 'machine',
  fields: z.object({
    areaId: Id,
    tag: Name,
    name: Name,
    kind: Name,
    standby: z.boolean().default(false),
    hoursPerDay: z.number().min(0).max(24).default(24),
  }),
  filters: z.object({ areaId: Id.optional(), standby: Flagged.optional(), search: Text.optional() }),
  sorts: ['tag', 'name'],
  writers: engineering,
})

export const shafts = registerEndpoints({
  plural: 'shafts',
  noun: 'shaft',
  fields: z.object({
    machineId: Id,
    code: Name,
    name: Name,
    speedRpm: z.number().positive().max(100_000).nullable().default(null),
    hollowBoreMm: z.number().min(0).max(5000).default(0),
    attitude: ShaftAttitude.default('horizontal'),
    locatingOverrideReason: Text.nullable().default(null),
  }),
  filters: z.object({ machineId: Id.optional() }),
  sorts: ['code', 'name'],
  writers: engineering,
})

export const meters = registerEndpoints({
  plural: 'meters',
  noun: 'hour meter',
  fields: z.object({
    machineId: Id,
    name: Name,
    rolloverAtHours: z.number().positive().max(10_000_000).nullable().default(null),
  }),
  filters: z.object({ machineId: Id.optional() }),
  sorts: ['name'],
  writers: engineering,
})

export const bearingTypes = registerEndpoints({
  plural: 'bearing-types',
  noun: 'bearing type',
  fields: z.object({
    designation: Name,
    basicCode: Name,
    series: Name,
    kind: BearingKind,
    boreMm: Millimetres,
    outsideDiameterMm: Millimetres,
    widthMm: Millimetres,
    taper: Taper.nullable().default(null),
    clearanceClass: ClearanceClass.default('CN'),
    massKg: z.number().positive().max(100_000).nullable().default(null),
    dynamicLoadRatingKn: z.number().positive().max(1_000_000).nullable().default(null),
    staticLoadRatingKn: z.number().positive().max(1_000_000).nullable().default(null),
    sealed: z.boolean().default(false),
  }),
  filters: z.object({ series: Text.optional(), kind: BearingKind.optional(), search: Text.optional() }),
  sorts: ['designation', 'boreMm'],
  writers: engineering,
})

export const bearings = registerEndpoints({
  plural: 'bearings',
  noun: 'bearing',
  fields: z.object({
    bearingTypeId: Id,
    serial: Name.nullable().default(null),
    lot: Text.nullable().default(null),
    maker: Text.nullable().default(null),
    packedOn: Day.nullable().default(null),
  }),
  filters: z.object({ bearingTypeId: Id.optional(), serial: Text.optional() }),
  sorts: ['createdAt', 'serial'],
  writers: shaftWork,
})

export const greases = registerEndpoints({
  plural: 'greases',
  noun: 'grease',
  fields: z.object({
    name: Name,
    thickener: Name,
    nlgiGrade: Name,
    baseOilViscosity40cMm2s: z.number().positive().max(100_000).nullable().default(null),
    code: Text.nullable().default(null),
  }),
  filters: z.object({ thickener: Text.optional() }),
  sorts: ['name'],
  writers: engineering,
})

export const parts = registerEndpoints({
  plural: 'parts',
  noun: 'part',
  fields: z.object({
    number: Name,
    designation: Name,
    kind: PartKind,
    description: Text.default(''),
    bin: Text.nullable().default(null),
  }),
  filters: z.object({ kind: PartKind.optional(), search: Text.optional() }),
  sorts: ['number', 'designation', 'bin'],
  writers: storesWork,
})

export const positions = registerEndpoints({
  plural: 'positions',
  noun: 'position',
  fields: z.object({
    shaftId: Id,
    tag: Name,
    name: Name,
    locating: z.boolean(),
    seat: SeatKind.default('adapter-sleeve'),
    shaftSystem: ShaftSystem.default('metric'),
    shaftDiameterMm: Millimetres.nullable().default(null),
    housingCode: Text.nullable().default(null),
    housingSeatWidthMm: Millimetres.nullable().default(null),
    bearingTypeId: Id,
    kitId: Id.nullable().default(null),
    makerChartId: Id.nullable().default(null),
    ownReductionMinUm: Micrometres.nullable().default(null),
    ownReductionMaxUm: Micrometres.nullable().default(null),
    ownResidualMinUm: Micrometres.nullable().default(null),
    ownBandSource: Text.nullable().default(null),
    retiredAt: Instant.nullable().default(null),
  }),
  filters: z.object({
    shaftId: Id.optional(),
    bearingTypeId: Id.optional(),
    kitId: Id.optional(),
    tag: Text.optional(),
  }),
  sorts: ['tag', 'name'],
  writers: engineering,
})

export const GaugeKind = z.enum(['feeler-metric', 'feeler-inch', 'other'])
/** Blade thicknesses, thin to thick, kept to the nanometre. */
const Blades = z
  .array(Micrometres.positive())
  .min(1)
  .max(60)
  .refine(
    (blades) => blades.every((um, at) => at === 0 || toNanometres(um, 'um') > toNanometres(blades[at - 1] ?? 0, 'um')),
    'list the blades from the thinnest to the thickest, each once',
  )

/** The blade sets of the site; a sheet names the one that was used. */
export const gauges = registerEndpoints({
  plural: 'gauges',
  noun: 'gauge',
  fields: z.object({
    name: Name,
    kind: GaugeKind.default('feeler-metric'),
    bladesUm: Blades,
    checkedUntil: Day.nullable().default(null),
    note: Text.default(''),
  }),
  filters: z.object({ search: Text.optional() }),
  sorts: ['name'],
  writers: engineering,
})
