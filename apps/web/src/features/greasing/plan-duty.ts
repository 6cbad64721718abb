import {
  greaseInterval,
  intervalLevels,
  type GreaseInterval,
  type IntervalInput,
  type IntervalLevels,
} from '@shaftbook/bearing/grease-interval'
import { InputError } from '@shaftbook/bearing/input-error'
import { z } from 'zod'

const level = <Name extends keyof IntervalLevels>(name: Name) =>
  z.enum(Object.keys(intervalLevels[name]) as [IntervalLevels[Name], ...IntervalLevels[Name][]])

const Duty = z.object({
  speedRpm: z.number(),
  boreMm: z.number(),
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

/** The duty that a plan's interval was computed from; null where it was set by hand or is not readable. */
export function dutyOf(plan: { source: string; duty: Record<string, unknown> }): IntervalInput | null {
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
