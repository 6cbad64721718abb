import { greaseCompatibility, thickenerNames, type Thickener } from '@shaftbook/standards/grease-compatibility'
import { greaseCompatibilityTable } from '@shaftbook/standards/grease-compatibility.data'
import { requireWithin } from './input-error.ts'
import { formula, type Source, type Sourced } from './source.ts'

export interface ChangeOver extends Sourced {
  verdict: 'flush' | 'flush-and-test' | 'strip'
  sentence: string
  /** Hours between flushing doses, three of them at a third of the interval; null when stripped or interval unknown. */
  flushEveryHours: number | null
}

/**
 * Change-over from one grease to another, by thickener: compatible means three doses at one third of the interval,
 * borderline the same with a mix test or watching, incompatible or unknown means strip, clean and fill anew. R-CHG.
 */
export function changeOver(
  from: Thickener | null,
  to: Thickener | null,
  intervalHours: number | null = null,
): ChangeOver {
  if (intervalHours !== null) requireWithin(intervalHours, 'intervalHours', 1, 200_000, 'h')
  const rating = from === null || to === null ? null : greaseCompatibility(from, to)
  const verdict = rating?.found ? ({ C: 'flush', B: 'flush-and-test', I: 'strip' } as const)[rating.rating] : 'strip'
  const names = [from, to].map((thickener) => (thickener === null ? 'unknown' : thickenerNames[thickener]))
  const sentences = {
    flush: 'Give three doses at a third of the interval each, then the normal interval.',
    'flush-and-test': 'Give three doses at a third of the interval each, and have the mix tested or watch it closely.',
    strip: 'Strip and clean the bearing and housing, change soaked seals, fill anew.',
  }
  return {
    verdict,
    sentence: `${names.join(' to ')}: ${sentences[verdict]} Label the fitting with the new grease.`,
    flushEveryHours: verdict === 'strip' || intervalHours === null ? null : intervalHours / 3,
    source: tableSource(),
    rule: 'R-CHG',
    cautions: ['Published charts contradict each other, ours takes the worst rating. The base oils have to agree too.'],
  }
}

function tableSource(): Source {
  const { standard, title, edition } = greaseCompatibilityTable
  return { kind: 'standard', title: `${title}; ${standard}`, edition, row: null, certainty: 'low' }
}

export type FillLevel = 'normal' | 'slow-or-dusty' | 'very-slow-and-dirty' | 'near-speed-limit'

/** Share of the housing's free space to fill, in per cent. R-FILL. */
export const housingFillPercent: Readonly<Record<FillLevel, { min: number; max: number }>> = Object.freeze({
  normal: { min: 20, max: 40 },
  'slow-or-dusty': { min: 40, max: 60 },
  'very-slow-and-dirty': { min: 70, max: 80 },
  'near-speed-limit': { min: 20, max: 30 },
})

export interface FirstFill extends Sourced {
  bearingVolumeCm3: number
  bearingG: number
  /** Range for the housing, null when its free volume is not known. */
  housingG: { min: number; max: number } | null
}

export interface FillInput {
  boreMm: number
  outsideDiameterMm: number
  widthMm: number
  massKg: number
  /** Free volume of the housing from its maker or a pour test. */
  housingVolumeCm3?: number | null
  level: FillLevel
  /** g/cm³, 0.9 where nothing better is known. */
  densityGCm3?: number
}

/**
 * First fill: all of the bearing's free space, (π/4) · B · (D² − d²)/1000 − m/7.8 · 1000 cm³ (mm, kg), and a share of the
 * housing's by speed and dirt. R-FILL.
 */
export function firstFill(input: FillInput): FirstFill {
  const { boreMm, outsideDiameterMm, widthMm, massKg, level } = input
  const density = input.densityGCm3 ?? 0.9
  requireWithin(density, 'densityGCm3', 0.5, 2.5, 'g/cm³')
  requireWithin(outsideDiameterMm, 'outsideDiameterMm', 10, 3000, 'mm')
  requireWithin(boreMm, 'boreMm', 3, outsideDiameterMm, 'mm')
  requireWithin(widthMm, 'widthMm', 3, 1000, 'mm')
  const solidCm3 = (Math.PI / 4) * widthMm * ((outsideDiameterMm ** 2 - boreMm ** 2) / 1000)
  requireWithin(massKg, 'massKg', 0.001, (solidCm3 * 7.8) / 1000, 'kg')
  const bearingVolumeCm3 = solidCm3 - (massKg / 7.8) * 1000
  const { min, max } = housingFillPercent[level]
  const volume = input.housingVolumeCm3 ?? null
  if (volume !== null) requireWithin(volume, 'housingVolumeCm3', 0, 1_000_000, 'cm³')
  const share = (percent: number): number => ((volume ?? 0) * density * percent) / 100
  return {
    bearingVolumeCm3,
    bearingG: bearingVolumeCm3 * density,
    housingG: volume === null ? null : { min: share(min), max: share(max) },
    source: formula('free volume by dimensions and mass'),
    rule: 'R-FILL',
    cautions: ['Never fill a housing completely without an outlet.'],
  }
}
