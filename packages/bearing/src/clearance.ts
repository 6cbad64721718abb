import {
  classRange,
  clearanceClasses,
  rowForBore,
  type BoreType,
  type ClassRange,
  type ClearanceClass,
} from '@shaftbook/standards/clearance-classes'
import { judgeBetween, type AcceptanceRule, type BandVerdict } from './acceptance.ts'
import { requireClearance } from './clearance-text.ts'
import { isSphericalRoller } from './designation.ts'
import {
  boreRange,
  certaintyCautions,
  formula,
  noAnswer,
  standardRow,
  type NoAnswer,
  type Source,
  type Sourced,
} from './source.ts'
import { formatLength, toNanometres, umFromNanometres } from './units.ts'

export type { ClearanceClass, ClassRange } from '@shaftbook/standards/clearance-classes'

export interface ClearanceRange extends Sourced {
  found: true
  range: ClassRange
  /** Ranges of all classes for the same bore. */
  classes: Record<ClearanceClass, ClassRange>
}

/** Clearance range in µm of a class for a bore in mm, by ISO 5753-1; a K bearing uses the tapered table. R-CL1. */
export function clearanceRange(
  boreMm: number,
  bore: BoreType,
  clearanceClass: ClearanceClass,
): ClearanceRange | NoAnswer {
  const lookup = rowForBore(boreMm, bore)
  if (!lookup.found) return noAnswer(lookup.reason, clearanceTables, 'R-CL1')
  const source = standardRow(lookup, `${boreRange(lookup.row)}, ${bore} bore`)
  const noted = lookup.row.note ? [`ISO 5753-1, ${source.row}: ${lookup.row.note}.`] : []
  const all = (name: ClearanceClass): ClassRange => classRange(lookup.row, name)
  return {
    found: true,
    range: all(clearanceClass),
    classes: { C2: all('C2'), CN: all('CN'), C3: all('C3'), C4: all('C4'), C5: all('C5') },
    source,
    rule: 'R-CL1',
    cautions: [...certaintyCautions(source), ...(clearanceClass === 'C5' ? noted : [])],
  }
}

export type ClassCheck =
  | (Sourced & {
      verdict: BandVerdict
      range: ClassRange
      /** Every class whose range holds the reading; neighbours share a limit. */
      readsLike: ClearanceClass[]
    })
  | (Sourced & { verdict: 'no-row'; reason: string })

const clearanceTables = 'ISO 5753-1, radial internal clearance'

/**
 * Compares the bench clearance (mean of the before readings, µm) with the class printed on the box. Outside means a
 * wrong class, a cold gauge or a damaged bearing. U is the expanded uncertainty of the mean in µm. R-CL2 by R-U.
 */
export function checkClass(
  benchUm: number,
  bearing: { boreMm: number; bore: BoreType; clearanceClass: ClearanceClass; series?: string | null },
  expandedUm: number,
  acceptance: AcceptanceRule = 'simple',
): ClassCheck {
  const valueUm = requireClearance(benchUm, 'bench clearance')
  const { series } = bearing
  if (typeof series === 'string' && !isSphericalRoller(series)) {
    const reason = `The clearance tables are for spherical roller bearings, series ${series} is another kind.`
    return noRow(reason)
  }
  const found = clearanceRange(bearing.boreMm, bearing.bore, bearing.clearanceClass)
  if (!found.found) return noRow(found.reason)
  const verdict = judgeBetween(valueUm, found.range, expandedUm, acceptance)
  const readsLike = clearanceClasses.filter(
    (name) => judgeBetween(valueUm, found.classes[name], 0, 'simple') === 'inside',
  )
  const cautions = [...found.cautions, ...classCaution(verdict, valueUm, bearing.clearanceClass, found, readsLike)]
  return { verdict, range: found.range, readsLike, source: found.source, rule: 'R-CL2', cautions }
}

/** Reduction of clearance in µm: before minus after, both taken the same way. Negative when after is larger. R-RED. */
export function reductionUm(beforeUm: number, afterUm: number): number {
  return umFromNanometres(toNanometres(beforeUm, 'um') - toNanometres(afterUm, 'um'))
}

function noRow(reason: string): ClassCheck {
  return { verdict: 'no-row', reason, source: formula(clearanceTables), rule: 'R-CL2', cautions: [] }
}

function classCaution(
  verdict: BandVerdict,
  valueUm: number,
  clearanceClass: ClearanceClass,
  found: { range: ClassRange; source: Source },
  readsLike: ClearanceClass[],
): string[] {
  if (verdict === 'inside') return []
  const range = `${found.range.minUm} to ${found.range.maxUm} µm`
  const like = readsLike.length > 0 ? ` It reads like ${readsLike.join(' or ')}.` : ''
  const shown = formatLength(valueUm, 'um', { decimals: 1 })
  if (verdict === 'not-proven') {
    return [
      `The bench clearance ${shown} is too near a limit of ${clearanceClass} (${range}) for this gauge to tell.${like}`,
    ]
  }
  return [
    `The bench clearance ${shown} is outside class ${clearanceClass} (${range}): wrong class, cold gauge or damage.${like}`,
  ]
}
