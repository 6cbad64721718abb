import type { BoreType, ClearanceClass } from '@shaftbook/standards/clearance-classes'
import type { Taper } from '@shaftbook/standards/table'
import { halfOfBand, type Band, type HalfAdvice, type ResidualMinimum } from './band.ts'
import { checkClass, reductionUm, type ClassCheck } from './clearance.ts'
import { checkRatio, type RatioCheck } from './drive-up.ts'
import { InputError } from './input-error.ts'
import { bearingReading, type BearingReading, type Row, type RowReading } from './readings.ts'
import { formula, type Sourced } from './source.ts'
import { mountUncertainty, type MountUncertainty } from './uncertainty.ts'
import {
  defaultVerdictSettings,
  formulaVersion,
  judgeReduction,
  judgeResidual,
  type ReductionVerdict,
  type ResidualVerdict,
  type VerdictSettings,
} from './verdict.ts'

export interface MountInput {
  bearing: {
    boreMm: number
    taper: Taper | null
    clearanceClass: ClearanceClass
    /** Such as 222; left out, a spherical roller bearing is meant. */
    series?: string | null
  }
  /** Readings of the unmounted bearing, both rows, in µm. */
  before: readonly RowReading[]
  /** Readings of the mounted bearing, both rows, in µm. */
  after: readonly RowReading[]
  /** From chooseBand; null when no source has one. */
  band: Band | null
  /** From residualMinimum; null when no source has one. */
  residualMinimum: ResidualMinimum | null
  /** Axial travel from the zero point in mm, if measured. */
  driveUpMm?: number | null
  settings?: Partial<VerdictSettings>
}

interface JudgedParts {
  reductionUm: number
  rowReductionUm: Record<Row, number>
  classCheck: ClassCheck
  reduction: ReductionVerdict
  residual: ResidualVerdict
  ratio: RatioCheck
  /** null when the bearing has no class range. */
  advice: HalfAdvice | null
  uncertainty: MountUncertainty
}

/** The source is the band's; the cautions are those of all parts, each once. */
export interface MountJudgement extends JudgedParts, Sourced {
  kind: 'judged'
  formulaVersion: string
  bench: BearingReading
  mounted: BearingReading
  settings: VerdictSettings
  rules: string[]
}

export interface MountRefused extends Sourced {
  kind: 'refused'
  code: 'row-missing' | 'band-missing'
  field: string
  sentence: string
}

/**
 * Everything that a mount's numbers say: means, reduction, class, rows, verdicts, ratio, advice. Too little data (a row
 * without a reading, no band) is refused as a value; numbers outside their domain throw InputError. R-CL1 to R-RATIO, R-U.
 */
export function judgeMount(input: MountInput): MountJudgement | MountRefused {
  const bench = bearingReading(input.before, 'before')
  if (bench.kind === 'refused') return bench
  const mounted = bearingReading(input.after, 'after')
  if (mounted.kind === 'refused') return mounted
  if (!input.band) return bandMissing(input.bearing.boreMm)
  requireSameClass(input)
  const settings = { ...defaultVerdictSettings, ...input.settings }
  const parts = judgeParts(input, input.band, bench.reading, mounted.reading, settings)
  return {
    kind: 'judged',
    formulaVersion,
    bench: bench.reading,
    mounted: mounted.reading,
    ...parts,
    settings,
    source: input.band.source,
    rule: 'R-RED, R-RES, R-U',
    rules: ['R-CL1', 'R-CL2', 'R-ROW', 'R-MEAN', 'R-RED', 'R-HALF', 'R-RES', 'R-RATIO', 'R-U'],
    cautions: [
      ...new Set([
        ...bench.reading.cautions,
        ...mounted.reading.cautions,
        ...partCautions(parts),
        ...mixedSources(input),
      ]),
    ],
  }
}

function judgeParts(
  input: MountInput,
  band: Band,
  bench: BearingReading,
  mounted: BearingReading,
  settings: VerdictSettings,
): JudgedParts {
  const { boreMm, taper, clearanceClass, series } = input.bearing
  const counts = (reading: BearingReading): number[] => [reading.rowCounts.A, reading.rowCounts.B]
  const uncertainty = mountUncertainty(counts(bench), counts(mounted), settings.budget, settings.guardFactor)
  const boreType: BoreType = taper === null ? 'cylindrical' : 'tapered'
  const reduced = reductionUm(bench.meanUm, mounted.meanUm)
  const bearing = { boreMm, bore: boreType, clearanceClass, series }
  const classCheck = checkClass(bench.meanUm, bearing, uncertainty.expandedBenchUm, settings.classRule)
  const rowReduced = (row: Row): number => reductionUm(bench.rowMeansUm[row], mounted.rowMeansUm[row])
  const { residualRule, reductionRule } = settings
  return {
    reductionUm: reduced,
    rowReductionUm: { A: rowReduced('A'), B: rowReduced('B') },
    classCheck,
    reduction: judgeReduction(reduced, band, uncertainty.expandedDifferenceUm, reductionRule),
    residual: judgeResidual(mounted.meanUm, input.residualMinimum, uncertainty.expandedMountedUm, residualRule),
    ratio: checkRatio({ driveUpMm: input.driveUpMm ?? null, reductionUm: reduced, taper, boreMm }),
    advice: classCheck.verdict === 'no-row' ? null : halfOfBand(bench.meanUm, classCheck.range, band),
    uncertainty,
  }
}

function partCautions(parts: JudgedParts): string[] {
  return [parts.classCheck, parts.reduction, parts.residual, parts.ratio].flatMap((part) => part.cautions)
}

function mixedSources({ band, residualMinimum }: MountInput): string[] {
  if (!band || !residualMinimum || band.source.title === residualMinimum.source.title) return []
  const sources = `${band.source.title} and ${residualMinimum.source.title}`
  return [`Band and residual minimum come from different sources (${sources}): guides differ, don't mix them.`]
}

function requireSameClass({ bearing, residualMinimum }: MountInput): void {
  if (!residualMinimum || residualMinimum.clearanceClass === bearing.clearanceClass) return
  const message = `The residual minimum is for ${residualMinimum.clearanceClass}, the bearing is ${bearing.clearanceClass}.`
  throw new InputError('conflict', 'residualMinimum', message)
}

function bandMissing(boreMm: number): MountRefused {
  const sentence = `No source has a clearance band for a bore of ${boreMm} mm: enter the maker's band for this position.`
  const sourced = { source: formula('no band'), rule: 'R-RED', cautions: [] }
  return { kind: 'refused', code: 'band-missing', field: 'band', sentence, ...sourced }
}
