import { lengthUnits, parseNumber, type LengthUnit } from '../lib/length-units.ts'

/** A length as a person typed it. The unit is null while nothing is typed: the person's own then applies. */
export interface MeasureText {
  text: string
  unit: LengthUnit | null
}

export const noMeasure: MeasureText = { text: '', unit: null }

export type MeasureRead =
  | { kind: 'empty' }
  | { kind: 'not-a-number' }
  | { kind: 'length'; um: number; typed: { value: number; unit: LengthUnit } }

/** Reads a typed length into µm, rounded to a nanometre; keeps value and unit as typed beside it. */
export function readMeasure(measure: MeasureText, ownUnit: LengthUnit): MeasureRead {
  if (measure.text.trim() === '') return { kind: 'empty' }
  const value = parseNumber(measure.text)
  if (value === undefined) return { kind: 'not-a-number' }
  const unit = measure.unit ?? ownUnit
  const um = Math.round(value * lengthUnits[unit].um * 1000) / 1000
  return { kind: 'length', um, typed: { value, unit } }
}
