import { InputError, requireWithin } from './input-error.ts'
import { formula, type Sourced } from './source.ts'
import { toUm } from './units.ts'

/** Standard uncertainties of one feeler reading, in µm. A site replaces any of them by its own. */
export interface UncertaintyBudget {
  /** Blade tolerance of ±4 µm, rectangular. The same set is used for every reading, so means don't reduce it. */
  bladeUm: number
  /** Step of 10 µm between two blade stacks, rectangular. */
  stepUm: number
  /** Feel of the hand. */
  feelUm: number
  /** Seating of the rollers, ovality of the ring, difference of the rows. */
  seatingUm: number
  /** Gauge and bearing not at one temperature. Common to the readings of one set, so means don't reduce it. */
  temperatureUm: number
}

export const defaultBudget: Readonly<UncertaintyBudget> = Object.freeze({
  bladeUm: 2.3,
  stepUm: 2.9,
  feelUm: 4,
  seatingUm: 5,
  temperatureUm: 1,
})

/**
 * The usual budget with every part in one proportion, so that one single reading has the standard uncertainty (µm, 0 to
 * 100) that a site has found for its feelers. Rule R-U.
 */
export function budgetOfReading(readingStandardUm: number): UncertaintyBudget {
  requireWithin(readingStandardUm, 'standard uncertainty of a reading', 0, 100, 'µm')
  const factor = readingStandardUm / readingUncertaintyUm([1])
  const { bladeUm, stepUm, feelUm, seatingUm, temperatureUm } = defaultBudget
  return {
    bladeUm: bladeUm * factor,
    stepUm: stepUm * factor,
    feelUm: feelUm * factor,
    seatingUm: seatingUm * factor,
    temperatureUm: temperatureUm * factor,
  }
}

/** Factor that expands a standard uncertainty to U (ISO 14253-1, about 95 %). */
export const defaultGuardFactor = 2

/**
 * Standard uncertainty of a bearing reading in µm, being the mean of row means. `rowCounts` are the readings in each
 * row (1 to 1000 each). Feel, step and seating shrink with the number of readings, blade and temperature don't.
 */
export function readingUncertaintyUm(rowCounts: readonly number[], budget: UncertaintyBudget = defaultBudget): number {
  checkBudget(budget)
  if (rowCounts.length === 0) throw new InputError('too-small', 'rowCounts', 'There is no row with readings.')
  for (const count of rowCounts) requireWithin(count, 'readings in a row', 1, 1000, 'readings')
  const common = budget.bladeUm ** 2 + budget.temperatureUm ** 2
  const perReading = budget.stepUm ** 2 + budget.feelUm ** 2 + budget.seatingUm ** 2
  const shares = rowCounts.reduce((sum, count) => sum + 1 / count, 0) / rowCounts.length ** 2
  return Math.sqrt(common + perReading * shares)
}

/** Standard uncertainty in µm of the difference of two readings (before and after), taken as independent. */
export function differenceUncertaintyUm(beforeUm: number, afterUm: number): number {
  return Math.hypot(beforeUm, afterUm)
}

/** Expanded uncertainty U = factor · u in µm, to the nanometre. Factor 0 to 4, usual 2 (ISO 14253-1) or 1.65. */
export function expandedUncertaintyUm(standardUm: number, guardFactor = defaultGuardFactor): number {
  requireWithin(standardUm, 'standard uncertainty', 0, 1000, 'µm')
  requireWithin(guardFactor, 'guard factor', 0, 4, '')
  return toUm(standardUm * guardFactor, 'um')
}

export interface MountUncertainty extends Sourced {
  benchUm: number
  mountedUm: number
  differenceUm: number
  /** Expanded, for the reduction. */
  expandedDifferenceUm: number
  /** Expanded, for the mounted clearance. */
  expandedMountedUm: number
  /** Expanded, for the bench clearance. */
  expandedBenchUm: number
  guardFactor: number
}

/** The uncertainty of one mount from the readings of each row before and after, as the verdicts use it. Rule R-U. */
export function mountUncertainty(
  before: readonly number[],
  after: readonly number[],
  budget: UncertaintyBudget = defaultBudget,
  guardFactor = defaultGuardFactor,
): MountUncertainty {
  const benchUm = readingUncertaintyUm(before, budget)
  const mountedUm = readingUncertaintyUm(after, budget)
  const differenceUm = differenceUncertaintyUm(benchUm, mountedUm)
  return {
    benchUm,
    mountedUm,
    differenceUm,
    expandedDifferenceUm: expandedUncertaintyUm(differenceUm, guardFactor),
    expandedMountedUm: expandedUncertaintyUm(mountedUm, guardFactor),
    expandedBenchUm: expandedUncertaintyUm(benchUm, guardFactor),
    guardFactor,
    source: formula('uncertainty budget of feeler readings, expanded by ISO 14253-1'),
    rule: 'R-U',
    cautions: [],
  }
}

function checkBudget(budget: UncertaintyBudget): void {
  for (const [field, value] of Object.entries(budget)) requireWithin(Number(value), field, 0, 200, 'µm')
}
