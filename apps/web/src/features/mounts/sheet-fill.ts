import { firstFill } from '@shaftbook/bearing/grease-change'
import { InputError } from '@shaftbook/bearing/input-error'
import type { BearingType } from './band-of-place.ts'

/** Grams that fill the free space of a bearing, to the next 5 g; null where its mass is not known. R-FILL. */
export function firstFillOf({ boreMm, outsideDiameterMm, widthMm, massKg }: BearingType): number | null {
  if (massKg === null) return null
  try {
    const fill = firstFill({ boreMm, outsideDiameterMm, widthMm, massKg, level: 'normal' })
    return Math.round(fill.bearingG / 5) * 5
  } catch (error) {
    if (error instanceof InputError) return null
    throw error
  }
}
