import { adapterSleevesTable } from '@shaftbook/standards/adapter-sleeves.data'
import { inchShaftsNear } from '@shaftbook/standards/inch-shafts'
import { shaftToleranceRow } from '@shaftbook/standards/shaft-tolerances'
import type { Taper } from '@shaftbook/standards/table'
import { taperLength } from './drive-up.ts'
import { InputError, requireWithin } from './input-error.ts'
import { boreRange, certaintyCautions, formula, noAnswer, standardRow, type NoAnswer, type Sourced } from './source.ts'
import { formatLength, toNanometres, umFromNanometres } from './units.ts'

export interface ShaftCheck extends Sourced {
  found: true
  verdict: 'inside-h9' | 'inside-h10' | 'below-h10' | 'above-nominal'
  /** Largest reading less nominal, and smallest reading less nominal, in µm. */
  largestUm: number
  smallestUm: number
  /** Largest less smallest reading: taper and roundness together. */
  spreadUm: number
  /** Travel in mm that the sleeve spends on closing onto the smallest diameter before any reduction starts. */
  travelLostMm: number
}

/**
 * Shaft readings (3 planes by 2 directions, mm) against h9 and h10 of the nominal diameter. Inside h9 is right, inside h10
 * warns with the travel that it eats, below h10 is for the engineer, above nominal the sleeve won't slide on. R-SHAFT.
 */
export function checkShaft(
  nominalMm: number,
  readingsMm: readonly number[],
  taper: Taper = '1:12',
): ShaftCheck | NoAnswer {
  const lookup = shaftToleranceRow(nominalMm)
  if (!lookup.found) return noAnswer(lookup.reason, 'ISO 286-1, shaft tolerances', 'R-SHAFT')
  if (readingsMm.length === 0) throw new InputError('too-small', 'readingsMm', 'There is no shaft reading.')
  const off = readingsMm.map((mm) => deviationNm(mm, nominalMm))
  const [largest, smallest] = [Math.max(...off), Math.min(...off)]
  const verdict = shaftVerdict(largest, smallest, lookup.row.it9Um * 1000, lookup.row.it10Um * 1000)
  const travelLostMm = Math.max(0, -smallest * taperLength[taper]) / 1_000_000
  const source = standardRow(lookup, boreRange(lookup.row))
  const spread = largest - smallest
  const oval = spread > lookup.row.it5Um * 1000 ? [spreadCaution(umFromNanometres(spread), lookup.row.it5Um)] : []
  return {
    found: true,
    verdict,
    largestUm: umFromNanometres(largest),
    smallestUm: umFromNanometres(smallest),
    spreadUm: umFromNanometres(spread),
    travelLostMm,
    source,
    rule: 'R-SHAFT',
    cautions: [...certaintyCautions(source), ...shaftCautions(verdict, travelLostMm), ...oval],
  }
}

export type ThreadSystem = 'inch' | 'metric'

export type InchAnswer = Sourced &
  (
    | { kind: 'clear'; system: ThreadSystem | null }
    | { kind: 'ask'; sentence: string; inchShaft: string; inchShaftMm: number; metricShaftMm: number }
  )

/**
 * Inch or metric: where a shaft reading in mm lies within 0.5 mm of an inch size and of a metric one, a person has to say
 * which it is. The position's stored answer settles it, and it is asked again at each mount. R-INCH.
 */
export function inchOrMetric(shaftMm: number, answer: ThreadSystem | null = null): InchAnswer {
  requireWithin(shaftMm, 'shaftMm', 5, 1000, 'mm')
  const sourced = { source: formula('inch and metric sizes within 0.5 mm'), rule: 'R-INCH' }
  const never = 'Inch sleeves, nuts and washers never go with metric ones.'
  if (answer) return { ...sourced, kind: 'clear', system: answer, cautions: [never] }
  const inch = inchShaftsNear(shaftMm, reach)[0]
  const metricShaftMm = metricSizeNear(shaftMm)
  if (!inch || metricShaftMm === null) {
    const system = inch ? 'inch' : metricShaftMm === null ? null : 'metric'
    return { ...sourced, kind: 'clear', system, cautions: [] }
  }
  const sentence = `${shaftMm} mm may be ${inch.inchShaft} in (${inch.inchShaftMm} mm) or ${metricShaftMm} mm: which is it? Read the nut's thread.`
  const { inchShaft, inchShaftMm } = inch
  return { ...sourced, kind: 'ask', sentence, inchShaft, inchShaftMm, metricShaftMm, cautions: [never] }
}

/** How near, in mm, a reading has to be to a size to be taken for it. */
const reach = 0.5

function metricSizeNear(shaftMm: number): number | null {
  const row = adapterSleevesTable.rows.find((sleeve) => Math.abs(sleeve.shaftMm - shaftMm) <= reach)
  return row?.shaftMm ?? null
}

function deviationNm(mm: number, nominalMm: number): number {
  requireWithin(mm, 'readingsMm', nominalMm - 5, nominalMm + 5, 'mm')
  return toNanometres(mm, 'mm') - toNanometres(nominalMm, 'mm')
}

function shaftVerdict(largest: number, smallest: number, h9: number, h10: number): ShaftCheck['verdict'] {
  if (largest > 0) return 'above-nominal'
  if (smallest >= -h9) return 'inside-h9'
  return smallest >= -h10 ? 'inside-h10' : 'below-h10'
}

function shaftCautions(verdict: ShaftCheck['verdict'], travelLostMm: number): string[] {
  const lost = `closing the sleeve takes up to ${travelLostMm.toFixed(2)} mm of travel before any reduction starts`
  const sentences = {
    'inside-h9': [],
    'inside-h10': [`The shaft is below h9: ${lost}.`],
    'below-h10': [`The shaft is below h10: ask the engineer (${lost}).`],
    'above-nominal': ['The shaft is above its nominal size: the sleeve will not slide on freely, stop.'],
  }
  return sentences[verdict]
}

function spreadCaution(spreadUm: number, it5Um: number): string {
  return `The readings differ by ${formatLength(spreadUm, 'um')}, roundness of about ${it5Um} µm is usual: look for wear.`
}
