import type { BearingKind, GaugeKind, SeatKind, ShaftAttitude } from '@shaftbook/contract/register-tables'
import { thickenerNames } from '@shaftbook/standards/grease-compatibility'
import type { z } from 'zod'
import type { Choice } from './form-spec.ts'

export const bearingKindWords: Readonly<Record<z.output<typeof BearingKind>, string>> = {
  'spherical-roller': 'spherical roller',
  'self-aligning-ball': 'self-aligning ball',
  'deep-groove-ball': 'deep groove ball',
  'cylindrical-roller': 'cylindrical roller',
  'tapered-roller': 'tapered roller',
  'angular-contact-ball': 'angular contact ball',
  other: 'other',
}

export const seatWords: Readonly<Record<z.output<typeof SeatKind>, string>> = {
  'adapter-sleeve': 'adapter sleeve',
  'withdrawal-sleeve': 'withdrawal sleeve',
  'tapered-journal': 'tapered journal',
  cylindrical: 'cylindrical seat',
}

export const attitudeWords: Readonly<Record<z.output<typeof ShaftAttitude>, string>> = {
  horizontal: 'horizontal',
  inclined: 'inclined',
  vertical: 'vertical',
}

export const gaugeKindWords: Readonly<Record<z.output<typeof GaugeKind>, string>> = {
  'feeler-metric': 'metric blades',
  'feeler-inch': 'inch blades',
  other: 'another kind',
}

export function choicesOf(words: Readonly<Record<string, string>>): Choice[] {
  return Object.entries(words).map(([value, label]) => ({ value, label }))
}

export function plainChoices(...values: string[]): Choice[] {
  return values.map((value) => ({ value, label: value }))
}

export const thickenerChoices: readonly Choice[] = [
  ...choicesOf(thickenerNames),
  { value: 'other', label: 'another one' },
]

/** A thickener in words; one that our table does not know stays as it was entered. */
export function thickenerName(thickener: string): string {
  return thickenerChoices.find(({ value }) => value === thickener)?.label ?? thickener
}
