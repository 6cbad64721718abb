import type { LengthUnit } from '../../lib/length-units.ts'
import { noMeasure, type MeasureText } from '../../ui/measure-text.ts'
import { bladesText, bladeUnit } from './blade-text.ts'
import type { FieldSpec, FormValue, FormValues } from './form-spec.ts'

/** What the fields of a form show at first: a row's own values, or `defaults` for a new one. */
export function startValues(
  fields: readonly FieldSpec[],
  row: Readonly<Record<string, unknown>>,
  unit: LengthUnit,
): FormValues {
  return Object.fromEntries(fields.map((field) => [field.name, startValue(field, row, unit)]))
}

function startValue(field: FieldSpec, row: Readonly<Record<string, unknown>>, unit: LengthUnit): FormValue {
  const value = row[field.name]
  if (field.kind === 'clearance') {
    return typeof value === 'number' ? exactLength(value, unit) : noMeasure
  }
  if (field.kind === 'blades' && Array.isArray(value))
    return bladesText(value as number[], bladeUnit(String(row[field.kindField])))
  if (field.kind === 'yes-no') return value === true ? 'yes' : value === false ? 'no' : ''
  return typeof value === 'string' || typeof value === 'number' ? String(value) : ''
}

/** A kept length in full, so that an unchanged field changes nothing: in µm for who reads µm, else in mm. */
export function exactLength(um: number, unit: LengthUnit): MeasureText {
  return unit === 'um' ? { text: String(um), unit } : { text: String(um / 1000), unit: 'mm' }
}
