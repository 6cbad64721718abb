import { formatLength } from '@shaftbook/bearing/units'
import type { LengthUnit } from '../../lib/length-units.ts'

/** Decimals of a computed length that needs them, one more than of a reading. */
const lengthDecimals: Readonly<Record<LengthUnit, number>> = { mm: 4, um: 1, in: 5, thou: 2 }

/** A computed number with its unit: lengths in µm in the person's unit, whole numbers as they are. */
export function figureText(value: number, unit: string, digits: number, own: LengthUnit): string {
  if (unit === 'µm') return lengthText(value, own)
  const exact = Number.isInteger(value) && Math.abs(value) < 1e9
  const text = value
    .toLocaleString('en-GB', exact ? {} : { maximumSignificantDigits: digits })
    .replaceAll(',', '\u00a0')
    .replace('-', '−')
  return unit === '' ? text : unit === '°' ? `${text}°` : `${text}\u00a0${unit}`
}

function lengthText(um: number, own: LengthUnit): string {
  const decimals = lengthDecimals[own]
  const fine = formatLength(um, own, { decimals, withUnit: false })
  return formatLength(um, own, { decimals: fine.endsWith('0') ? decimals - 1 : decimals })
}
