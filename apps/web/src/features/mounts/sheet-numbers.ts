import { parseNumber } from '../../lib/length-units.ts'
import type { Sheet } from './sheet.ts'

/** The number fields of a sheet and what the service takes in them. */
export const numberFields = {
  meterShowsHours: { min: 0, max: 1_000_000, unit: 'h' },
  shaftDiameterMm: { min: 1, max: 10_000, unit: 'mm' },
  temperatureC: { min: -60, max: 200, unit: '°C' },
  driveUpMm: { min: 0, max: 50, unit: 'mm' },
  nutAngleDeg: { min: 0, max: 3600, unit: '°' },
  ringWidthMm: { min: 0.1, max: 10_000, unit: 'mm' },
  capBoltTorqueNm: { min: 0.1, max: 100_000, unit: 'N·m' },
  greaseBearingG: { min: 0, max: 100_000, unit: 'g' },
  greaseHousingG: { min: 0, max: 100_000, unit: 'g' },
} as const satisfies Partial<Record<keyof Sheet, { min: number; max: number; unit: string }>>

export type NumberKey = keyof typeof numberFields

/** The number typed in a field; null when it is empty or not a number that the field takes. */
export function numberOf(sheet: Sheet, key: NumberKey): number | null {
  return numberFault(sheet, key) === undefined ? (parseNumber(sheet[key]) ?? null) : null
}

/** What is wrong with the number in a field; undefined when it is empty or right. */
export function numberFault(sheet: Sheet, key: NumberKey): string | undefined {
  const text = sheet[key]
  if (text.trim() === '') return undefined
  const value = parseNumber(text)
  const { min, max, unit } = numberFields[key]
  if (value === undefined) return 'This cannot be read as a number: write it like 0.5 or 0,5.'
  if (value < min || value > max) return `This is outside ${min} to ${max} ${unit}: check the number and its unit.`
  return undefined
}
