import { greaseDose } from '@shaftbook/bearing/grease'
import {
  greaseInterval,
  intervalLevels,
  type GreaseInterval,
  type IntervalInput,
  type IntervalLevels,
} from '@shaftbook/bearing/grease-interval'
import { InputError } from '@shaftbook/bearing/input-error'
import { z } from 'zod'
import type { GreaseEntry } from './grease-plans.ts'

const level = <Name extends keyof IntervalLevels>(name: Name) =>
  z.enum(Object.keys(intervalLevels[name]) as [IntervalLevels[Name], ...IntervalLevels[Name][]])

/** The duty that a plan is computed from, as a plan keeps it. */
const Duty = z.object({
  speedRpm: z.number(),
  boreMm: z.number(),
  outsideDiameterMm: z.number().optional(),
  widthMm: z.number().optional(),
  levels: z.object({
    temperature: level('temperature'),
    dirt: level('dirt'),
    moisture: level('moisture'),
    vibration: level('vibration'),
    shaft: level('shaft'),
    bearing: level('bearing'),
  }),
  loadOverRating: z.number().nullable().optional(),
  outerRingTurns: z.boolean().optional(),
  capLifted: z.boolean().optional(),
  method: z
    .discriminatedUnion('kind', [
      z.object({ kind: z.literal('factors') }),
      z.object({ kind: z.literal('halving'), outerRingC: z.number() }),
    ])
    .optional(),
})
export type PlanDuty = IntervalInput & { outsideDiameterMm?: number | undefined; widthMm?: number | undefined }

/** The duty that a plan's interval was computed from; null where it was set by hand or is not readable. */
export function dutyOf(plan: { source: string; duty: Record<string, unknown> }): PlanDuty | null {
  if (plan.source !== 'computed') return null
  const read = Duty.safeParse(plan.duty)
  return read.success ? read.data : null
}

/** The interval with its factors, or the sentence why there is none. */
export function intervalOf(duty: IntervalInput): GreaseInterval | { kind: 'refused'; sentence: string } {
  try {
    return greaseInterval(duty)
  } catch (error) {
    if (error instanceof InputError) return { kind: 'refused', sentence: error.message }
    throw error
  }
}

/** An interval as a plan says it: whole run hours, none more than the formula gives. 83.999 999 9 by the computer's arithmetic is 84. */
export function wholeHours(hours: number): number {
  return Math.floor(Number(hours.toPrecision(12)))
}

/** What the register says today of the place that a plan is for. */
export interface PlaceToday {
  readonly speedRpm: number | null
  readonly attitude: IntervalLevels['shaft']
  readonly bearingKind: string
  readonly boreMm: number
  readonly outsideDiameterMm: number
  readonly widthMm: number
}

/** The same duty with speed, attitude and bearing as the register has them today; temperature, dirt and load stay as told. */
export function dutyToday(duty: PlanDuty, place: PlaceToday): PlanDuty {
  const { speedRpm, attitude, bearingKind, boreMm, outsideDiameterMm, widthMm } = place
  const levels = { ...duty.levels, shaft: attitude, bearing: bearingLevel(bearingKind) }
  return { ...duty, speedRpm: speedRpm ?? duty.speedRpm, boreMm, outsideDiameterMm, widthMm, levels }
}

/** The level of R-INT for a kind of bearing. */
export function bearingLevel(kind: string): IntervalLevels['bearing'] {
  if (['deep-groove-ball', 'angular-contact-ball', 'self-aligning-ball'].includes(kind)) return 'radial-ball'
  return kind === 'cylindrical-roller' ? 'cylindrical-roller' : 'spherical-roller'
}

export interface PlanProposal {
  /** Whole run hours that the plan comes to today; null where the formula gives none any more. */
  readonly intervalHours: number | null
  readonly doseG: number
  /** More than 10 % from what it was computed from. */
  readonly intervalDiffers: boolean
  readonly doseDiffers: boolean
}

const noticed = 0.1

/**
 * What a computed plan comes to by the register of today, beside what it came to when it was made. A difference of more than
 * 10 % proposes a new plan and never changes one. Null where the plan was set by hand. R-INT, R-DOSE.
 */
export function proposalOf(
  plan: {
    readonly source: string
    readonly duty: Record<string, unknown>
    readonly entry: GreaseEntry
    readonly doseG: number
    readonly intervalHours: number
  },
  place: PlaceToday,
): PlanProposal | null {
  const duty = dutyOf(plan)
  if (!duty) return null
  const [then, today] = [intervalOf(duty), intervalOf(dutyToday(duty, place))]
  const hoursThen = then.kind === 'interval' ? then.intervalHours : plan.intervalHours
  const hoursToday = today.kind === 'interval' ? today.intervalHours : null
  const { outsideDiameterMm, widthMm } = duty
  const sizeKept = outsideDiameterMm !== undefined && widthMm !== undefined
  const doseThen = sizeKept ? greaseDose(outsideDiameterMm, widthMm, plan.entry).doseG : plan.doseG
  const doseG = greaseDose(place.outsideDiameterMm, place.widthMm, plan.entry).doseG
  // a dose without its size was rounded by hand
  const roundedBy = sizeKept ? 0 : 1
  return {
    intervalHours: hoursToday === null ? null : wholeHours(hoursToday),
    doseG,
    intervalDiffers: hoursToday === null || differs(hoursThen, hoursToday),
    doseDiffers: differs(doseThen, doseG) && Math.abs(doseG - doseThen) > roundedBy,
  }
}

function differs(then: number, today: number): boolean {
  return Math.abs(today - then) > noticed * then
}
