import type { Taper } from '@shaftbook/standards/table'
import type { Band } from './band.ts'
import { checkClass } from './clearance.ts'
import { adviceOf, adviceWords, type AdviceReason, type DriveUpAdvice } from './drive-up-advice.ts'
import { readSteps, type GuidanceInput, type ReadStep } from './drive-up-steps.ts'
import { travelFacts, type TravelFacts } from './drive-up-travel.ts'
import { guidanceWarnings, type GuidanceWarning } from './drive-up-warnings.ts'
import { driveUpWindow, feelerTarget, type DriveUpWindow, type FeelerTarget } from './drive-up-window.ts'
import { stacksDownTo, type BladeStack } from './feeler-blades.ts'
import { bearingReading, type BearingReading, type Row } from './readings.ts'
import { formula, type Sourced } from './source.ts'
import {
  differenceUncertaintyUm,
  expandedUncertaintyUm,
  mountUncertainty,
  readingUncertaintyUm,
} from './uncertainty.ts'
import { toNanometres, toUm } from './units.ts'
import {
  defaultVerdictSettings,
  judgeReduction,
  judgeResidual,
  type ReductionVerdict,
  type ResidualVerdict,
  type VerdictSettings,
} from './verdict.ts'

/** The state of a drive-up and the advice for it. All lengths µm where not said. */
export interface DriveUpGuided extends Sourced {
  kind: 'guided'
  advice: DriveUpAdvice
  reason: AdviceReason
  /** The advice in words: how it stands and what to do next. */
  sentence: string
  /** What to do next alone, for a screen that shows how it stands by itself. */
  next: string
  benchUm: number
  /** The steps that both rows were read in. */
  steps: ReadStep[]
  /** The newest of them; null before the first. */
  now: ReadStep | null
  window: DriveUpWindow
  /** Further reduction to the near edge, the middle of the aim and the far edge; below nothing when it is passed. */
  left: { nearUm: number; aimUm: number | null; farUm: number }
  /** Verdicts of the newest step as judgeMount gives them; null before the first. */
  verdict: ReductionVerdict | null
  residual: ResidualVerdict | null
  travel: TravelFacts
  /** The stacks that tell that the window is reached; null without a set, or where the set is too coarse. */
  feelers: FeelerTarget | null
  /** The next thinner stacks to try, thickest first, down to the aim. */
  nextStacks: BladeStack[]
  /** U of the difference of two steps: a smaller step can't be told from none by this gauge. */
  smallestStepUm: number
  /** U of the reduction. */
  expandedUm: number
  warnings: GuidanceWarning[]
}

/** What has to be read before anything can be said. */
export interface ReadFirst extends Sourced {
  kind: 'read-first'
  where: 'bench' | 'step'
  row: Row
  sentence: string
}

export interface NoGuidance extends Sourced {
  kind: 'no-guidance'
  reason: 'by-feel' | 'no-taper' | 'no-band'
  sentence: string
}

export type DriveUpGuidance = DriveUpGuided | ReadFirst | NoGuidance

/**
 * Guides a drive-up by its readings so far: how far the reduction has come, what is left to the window and its aim, and one
 * advice. It never has the nut turned the other way: what is too far is started again. Too little data is a value; numbers
 * outside their domain throw InputError. R-MEAN, R-RED, R-HALF, R-RES, R-RATIO, R-ROW, R-TAB, R-U.
 */
export function driveUpGuidance(input: GuidanceInput): DriveUpGuidance {
  const { band, bearing } = input
  if (input.byFeel) return noGuidance('by-feel', 'A mount by feel has no gauge to go by: a named person judges it.')
  if (bearing.taper === null)
    return noGuidance(
      'no-taper',
      'A bearing with cylindrical bore is not driven up a taper: its clearance follows from the fit.',
    )
  if (band === null) {
    const bore = `No source has a clearance band for a bore of ${bearing.boreMm} mm.`
    return noGuidance('no-band', `${input.noBand ?? bore} Without a band nobody can say where to stop.`)
  }
  const bench = bearingReading(input.bench, 'bench')
  if (bench.kind === 'refused') return readFirst('bench', bench.row)
  const settings = { ...defaultVerdictSettings, ...input.settings }
  const steps = readSteps(bench.reading, input, settings.budget)
  if ('missing' in steps) return readFirst('step', steps.missing)
  return guided({ input, band, taper: bearing.taper, settings, bench: bench.reading, steps: steps.read })
}

interface Known {
  input: GuidanceInput
  band: Band
  taper: Taper
  settings: VerdictSettings
  bench: BearingReading
  steps: ReadStep[]
}

function guided(known: Known): DriveUpGuided {
  const { input, band, taper, settings, bench, steps } = known
  const { bearing, stacks, unit = 'um' } = input
  const now = steps.at(-1) ?? null
  const judged = judge(known, now)
  const { window, uncertainty, classCheck, verdict, residual } = judged
  const left = leftTo(window, now)
  const travel = travelFacts({ steps, band, taper, boreMm: bearing.boreMm, pitchMm: input.pitchMm ?? null, left })
  const smallestStepUm = stepUncertaintyUm(known, now, now)
  const facts = { now, verdict, residual, window, band, smallestStepUm, leastLikelyUm: leastLikelyUm(known) }
  const decided = adviceOf(facts)
  const words = adviceWords(facts, decided, unit)
  const feelers = stacks && !window.noRoom ? feelerTarget(window, stacks) : null
  const { reason } = decided
  const warnings = guidanceWarnings({
    input,
    settings,
    window,
    bench,
    now,
    classCheck,
    travel,
    uncertainty,
    feelers,
    reason,
    unit,
  })
  return {
    kind: 'guided',
    ...decided,
    sentence: `${words.stands} ${words.next}`,
    next: words.next,
    benchUm: bench.meanUm,
    steps,
    now,
    window,
    left,
    verdict,
    residual,
    travel,
    feelers,
    nextStacks: stacks ? nextStacks(now?.reading ?? bench, window, stacks) : [],
    smallestStepUm,
    expandedUm: uncertainty.expandedDifferenceUm,
    warnings,
    source: band.source,
    rule: 'R-RED, R-RES, R-U',
    cautions: [...new Set([...band.cautions, ...warnings.map(({ sentence }) => sentence)])],
  }
}

/** The verdicts as judgeMount gives them, and the window that goes with them. Before the first step, as if read like the bench. */
function judge({ input, band, settings, bench }: Known, now: ReadStep | null) {
  const { boreMm, clearanceClass, series } = input.bearing
  const uncertainty = mountUncertainty(
    counts(bench),
    counts(now?.reading ?? bench),
    settings.budget,
    settings.guardFactor,
  )
  const { expandedDifferenceUm, expandedMountedUm, expandedBenchUm } = uncertainty
  const asked = { boreMm, bore: 'tapered' as const, clearanceClass, series: series ?? null }
  const classCheck = checkClass(bench.meanUm, asked, expandedBenchUm, settings.classRule)
  const range = classCheck.verdict === 'no-row' ? null : classCheck.range
  const { residualMinimum } = input
  const window = driveUpWindow({
    benchUm: bench.meanUm,
    band,
    residualMinimum,
    range,
    expandedDifferenceUm,
    expandedMountedUm,
    settings,
  })
  const { reductionRule, residualRule } = settings
  return {
    uncertainty,
    classCheck,
    window,
    verdict: now && judgeReduction(now.reductionUm, band, expandedDifferenceUm, reductionRule),
    residual: now && judgeResidual(now.reading.meanUm, residualMinimum, expandedMountedUm, residualRule),
  }
}

/** U of the difference between two mounted readings, or of readings like those of the bench, µm. R-U. */
function stepUncertaintyUm({ bench, settings }: Known, one: ReadStep | null, other: ReadStep | null): number {
  const benchUm = readingUncertaintyUm(counts(bench), settings.budget)
  const u = differenceUncertaintyUm(one?.standardUm ?? benchUm, other?.standardUm ?? benchUm)
  return expandedUncertaintyUm(u, settings.guardFactor)
}

/** The most that bench and earlier steps read, less the uncertainty of the difference: a ring on its taper does not go slack. */
function leastLikelyUm(known: Known): number {
  const now = known.steps.at(-1) ?? null
  const earlier = known.steps.slice(0, -1).map((step) => step.reductionUm - stepUncertaintyUm(known, step, now))
  return toUm(Math.max(-stepUncertaintyUm(known, null, now), ...earlier), 'um')
}

function leftTo(window: DriveUpWindow, now: ReadStep | null): DriveUpGuided['left'] {
  const left = (um: number): number => toUm(um - (now?.reductionUm ?? 0), 'um')
  return { nearUm: left(window.nearUm), aimUm: window.aim && left(window.aim.middleUm), farUm: left(window.farUm) }
}

/** The stacks thinner than the clearance now, down to the aim: those that are to go no longer, one after the other. */
function nextStacks(reading: BearingReading, window: DriveUpWindow, stacks: readonly BladeStack[]): BladeStack[] {
  if (window.aim === null) return []
  const aimUm = toUm(window.topUm + window.nearUm - window.aim.maxUm, 'um')
  const thinner = stacksDownTo(reading.meanUm, Math.max(0, aimUm), stacks)
  return thinner.filter(({ totalUm }) => toNanometres(totalUm, 'um') < toNanometres(reading.meanUm, 'um'))
}

function counts({ rowCounts }: BearingReading): number[] {
  return [rowCounts.A, rowCounts.B]
}

function readFirst(where: ReadFirst['where'], row: Row): ReadFirst {
  const place = where === 'bench' ? `The bench reading lacks row ${row}` : `The newest step lacks row ${row}`
  const sentence = `${place}: feel both rows before anything is told from them.`
  return {
    kind: 'read-first',
    where,
    row,
    sentence,
    source: formula('mean of the two row means'),
    rule: 'R-MEAN',
    cautions: [],
  }
}

function noGuidance(reason: NoGuidance['reason'], sentence: string): NoGuidance {
  return { kind: 'no-guidance', reason, sentence, source: formula('no guidance'), rule: 'R-RED', cautions: [] }
}
