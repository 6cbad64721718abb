import { reductionUm } from '@shaftbook/bearing/clearance'
import { judgeMount, type MountInput, type MountJudgement } from '@shaftbook/bearing/mount'
import { bearingReading, type BearingReading, type RowReading } from '@shaftbook/bearing/readings'
import {
  budgetOfReading,
  defaultBudget,
  expandedUncertaintyUm,
  readingUncertaintyUm,
} from '@shaftbook/bearing/uncertainty'
import { defaultVerdictSettings, formulaVersion, judgeResidual, type VerdictSettings } from '@shaftbook/bearing/verdict'
import type { SiteSettings } from './access.ts'
import { presentBand, type BandBearing, type PositionBand } from './band-of-position.ts'
import { judgedChecks, notDoneChecks, rowChecks } from './mount-checks.ts'
import type { Judgement } from './judgement.ts'
import type { MountRecord, Reading } from './mounts.ts'

type JudgedReading = Pick<Reading, 'moment' | 'row' | 'clearanceUm'> & Partial<Pick<Reading, 'struck'>>

/** All that a mount is judged by. */
export interface MountQuestion {
  readonly method: MountRecord['method']
  readonly bearing: BandBearing
  readonly bands: PositionBand
  readonly readings: readonly JudgedReading[]
  /** Axial travel from the zero point, in mm. */
  readonly driveUpMm: number | null
  readonly settings: SiteSettings
}

/** The judgement of a record before anybody could judge it. */
export const notJudged: Judgement = {
  verdict: null,
  residual: null,
  benchMeanUm: null,
  mountedMeanUm: null,
  reductionUm: null,
  expandedUncertaintyUm: null,
  band: null,
  residualMinUm: null,
  checks: [],
  cautions: [],
  formulaVersion,
}

/**
 * What the formulas say of a mount. What can't be judged yet is null. A mount by feel has no verdict in numbers, neither
 * has one without a taper; drive-up without readings proves nothing, neither does a reduction without a band.
 */
export function judgementOf(question: MountQuestion): Judgement {
  const { method, bands } = question
  const [bench, mounted] = [meanOf(question, 'bench'), meanOf(question, 'mounted')]
  const means: Judgement = {
    ...notJudged,
    benchMeanUm: bench?.meanUm ?? null,
    mountedMeanUm: mounted?.meanUm ?? null,
    reductionUm: bench && mounted ? reductionUm(bench.meanUm, mounted.meanUm) : null,
    checks: [...rowChecks(bench, mounted), ...notDoneChecks],
  }
  if (method === 'by-feel' || !bands.judged) return means
  const known = {
    ...means,
    band: bands.band && presentBand(bands.band),
    residualMinUm: bands.residualMinimum?.minUm ?? null,
  }
  const judgement = judgeMount(asInput(question))
  if (judgement.kind === 'judged') return { ...known, ...fully(judgement) }
  const proves = judgement.code === 'band-missing' || method === 'drive-up'
  return { ...known, verdict: proves ? 'not-proven' : null, residual: mounted ? residualOnly(question, mounted) : null }
}

/** Whether a mount is signed only with a reason: it is not proven inside its band, or to leave clearance enough. */
export function needsReason({ verdict, residual }: Pick<Judgement, 'verdict' | 'residual'>): boolean {
  return (verdict !== null && verdict !== 'inside') || residual === 'too-small' || residual === 'not-proven'
}

function fully(judgement: MountJudgement): Partial<Judgement> {
  return {
    verdict: judgement.reduction.verdict,
    residual: judgement.residual.verdict,
    expandedUncertaintyUm: judgement.uncertainty.expandedDifferenceUm,
    checks: judgedChecks(judgement),
    cautions: judgement.cautions,
  }
}

function residualOnly({ bands, settings }: MountQuestion, mounted: BearingReading): Judgement['residual'] {
  const { budget, guardFactor, residualRule } = verdictSettings(settings)
  const standardUm = readingUncertaintyUm([mounted.rowCounts.A, mounted.rowCounts.B], budget)
  const expandedUm = expandedUncertaintyUm(standardUm, guardFactor)
  return judgeResidual(mounted.meanUm, bands.residualMinimum, expandedUm, residualRule).verdict
}

type JudgedMoment = 'bench' | 'mounted'

function meanOf({ readings }: MountQuestion, moment: JudgedMoment): BearingReading | null {
  const answer = bearingReading(rowReadings(readings, moment), moment)
  return answer.kind === 'reading' ? answer.reading : null
}

/** The readings of one moment that count, as the formulas take them: struck ones don't. */
export function rowReadings(readings: MountQuestion['readings'], moment: JudgedMoment): RowReading[] {
  return readings
    .filter((reading) => reading.moment === moment && !reading.struck)
    .map(({ row, clearanceUm }) => ({ row, um: clearanceUm }))
}

function asInput({ bearing, bands, readings, driveUpMm, settings }: MountQuestion): MountInput {
  const { boreMm, taper, clearanceClass, kind } = bearing
  // the clearance tables hold for spherical roller bearings; of another kind the series says so
  const series = kind === 'spherical-roller' ? null : bearing.series
  return {
    bearing: { boreMm, taper, clearanceClass, series },
    before: rowReadings(readings, 'bench'),
    after: rowReadings(readings, 'mounted'),
    band: bands.band,
    residualMinimum: bands.residualMinimum,
    driveUpMm,
    settings: verdictSettings(settings),
  }
}

/** The site's settings as the formulas take them. */
export function verdictSettings(settings: SiteSettings): VerdictSettings {
  const { readingStandardUncertaintyUm: readingUm } = settings
  return {
    ...defaultVerdictSettings,
    reductionRule: settings.reductionAcceptance,
    residualRule: settings.residualAcceptance,
    guardFactor: settings.coverageFactor,
    budget: readingUm === null ? defaultBudget : budgetOfReading(readingUm),
  }
}
