import { InputError } from '@shaftbook/bearing/input-error'
import { fromUm, parseLength } from '@shaftbook/bearing/units'
import { parseNumber } from '../../lib/length-units.ts'
import type { Sheet, TextField } from './sheet.ts'

interface Limits {
  min: number
  max: number
  unit: string
  /** It may be typed with a unit of its own: `4.3285 in`. */
  ownUnit?: boolean
}

/** The number fields of a sheet and what the service takes in them. */
export const numberFields = {
  meterShowsHours: { min: 0, max: 1_000_000, unit: 'h' },
  housingSeatWidthMm: { min: 1, max: 10_000, unit: 'mm' },
  softFootMm: { min: 0, max: 20, unit: 'mm' },
  temperatureC: { min: -60, max: 200, unit: '°C' },
  driveUpMm: { min: 0, max: 50, unit: 'mm' },
  nutAngleDeg: { min: 0, max: 3600, unit: '°' },
  lockForwardDeg: { min: 0, max: 360, unit: '°' },
  ringWidthMm: { min: 0.1, max: 10_000, unit: 'mm' },
  boltTargetNm: { min: 0.1, max: 100_000, unit: 'N·m' },
  capBoltTorqueNm: { min: 0.1, max: 100_000, unit: 'N·m' },
  greaseBearingG: { min: 0, max: 100_000, unit: 'g' },
  greaseHousingG: { min: 0, max: 100_000, unit: 'g' },
  twinTemperatureC: { min: -60, max: 300, unit: '°C' },
} as const satisfies Partial<Record<TextField, Limits>>

export type NumberKey = keyof typeof numberFields

/** Numbers that stand in rows of their own. */
export const rowNumbers = {
  diameterMm: { min: 1, max: 10_000, unit: 'mm', ownUnit: true },
  driveUpMm: numberFields.driveUpMm,
  nutAngleDeg: numberFields.nutAngleDeg,
  minutes: { min: 0, max: 10_000, unit: 'min' },
  temperatureC: { min: -60, max: 300, unit: '°C' },
  vibrationMmS: { min: 0, max: 200, unit: 'mm/s' },
} as const satisfies Record<string, Limits>

/** The number typed in a field; null when it is empty or not a number that the field takes. */
export function numberOf(sheet: Sheet, key: NumberKey): number | null {
  return typedNumber(sheet[key], numberFields[key])
}

export function typedNumber(text: string, limits: Limits): number | null {
  return typedFault(text, limits) === undefined ? (valueOf(text, limits) ?? null) : null
}

/** What is wrong with the number in a field; undefined when it is empty or right. */
export function numberFault(sheet: Sheet, key: NumberKey): string | undefined {
  return typedFault(sheet[key], numberFields[key])
}

function valueOf(text: string, { ownUnit = false }: Limits): number | undefined {
  const plain = parseNumber(text)
  if (plain !== undefined || !ownUnit) return plain
  try {
    return fromUm(parseLength(text, 'mm').valueUm, 'mm')
  } catch (error) {
    if (error instanceof InputError) return undefined
    throw error
  }
}

/** Whether a length is typed with a unit of its own. */
export function hasOwnUnit(text: string): boolean {
  return /\D$/u.test(text.trim()) && !/[.,]$/u.test(text.trim())
}

export function typedFault(text: string, limits: Limits): string | undefined {
  const { min, max, unit } = limits
  if (text.trim() === '') return undefined
  const value = valueOf(text, limits)
  if (value === undefined) return 'This cannot be read as a number: write it like 0.5 or 0,5.'
  if (value < min || value > max) return `This is outside ${min} to ${max} ${unit}: check the number and its unit.`
  return undefined
}
