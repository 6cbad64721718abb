import { reductionUm } from '@shaftbook/bearing/clearance'
import { judgeMount, type MountJudgement } from '@shaftbook/bearing/mount'
import { bearingReading, type BearingReading } from '@shaftbook/bearing/readings'
import {
  defaultBudget,
  expandedUncertaintyUm,
  readingUncertaintyUm,
  type UncertaintyBudget,
} from '@shaftbook/bearing/uncertainty'
import { defaultVerdictSettings, formulaVersion, judgeResidual, type VerdictSettings } from '@shaftbook/bearing/verdict'
import type { SiteSettings } from '@shaftbook/contract/access'
import type { Judgement } from '@shaftbook/contract/mounts'
import { presentBand, type BandAnswer, type BandBearing } from './band.ts'
import { judgedChecks, notDoneChecks, rowChecks } from './checks.ts'
import type { TakenReading } from './typed-readings.ts'

export interface MountQuestion {
  readonly method: string
  readonly bearing: BandBearing
  readonly bands: BandAnswer
  readonly readings: readonly Pick<TakenReading, 'moment' | 'row' | 'clearanceUm'>[]
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
export function judge(question: MountQuestion): Judgement {
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

function meanOf({ readings }: MountQuestion, moment: TakenReading['moment']): BearingReading | null {
  const answer = bearingReading(rowReadings(readings, moment), moment)
  return answer.kind === 'reading' ? answer.reading : null
}

function rowReadings(readings: MountQuestion['readings'], moment: TakenReading['moment']) {
  return readings
    .filter((reading) => reading.moment === moment)
    .map(({ row, clearanceUm }) => ({ row, um: clearanceUm }))
}

function asInput({ bearing, bands, readings, driveUpMm, settings }: MountQuestion) {
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
function verdictSettings(settings: SiteSettings): VerdictSettings {
  return {
    ...defaultVerdictSettings,
    reductionRule: settings.reductionAcceptance,
    residualRule: settings.residualAcceptance,
    guardFactor: settings.coverageFactor,
    budget: budgetOf(settings.readingStandardUncertaintyUm),
  }
}

/** The usual budget, in proportion to what the site has found for one reading. */
function budgetOf(readingStandardUm: number | null): UncertaintyBudget {
  if (readingStandardUm === null) return defaultBudget
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
