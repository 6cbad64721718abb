import { driveUpGuidance, type DriveUpGuidance } from '@shaftbook/bearing/drive-up-guidance'
import type { BladeStack } from '@shaftbook/bearing/feeler-blades'
import { bearingReading, type RowReading } from '@shaftbook/bearing/readings'
import type { SiteSettings } from '@shaftbook/contract/access'
import type { BandBearing } from '@shaftbook/contract/band-of-position'
import { verdictSettings } from '@shaftbook/contract/judge-mount'
import type { LengthUnit } from '../../lib/length-units.ts'
import type { GaugeInput } from '../../ui/clearance-gauge-geometry.ts'
import type { PlaceLimits } from './band-of-place.ts'
import { rowNumbers, typedNumber } from './sheet-numbers.ts'
import { isOpenQuestion, readReading, type ReadingAnswer } from './sheet-readings.ts'
import { emptyPair, type ReadingPair, type TypedReading, type TypedStep } from './sheet.ts'

/** All that a drive-up is guided by, as typed. */
export interface DriveUpQuestion {
  bench: readonly ReadingPair[]
  steps: readonly TypedStep[]
  /** Unit of the typed readings. */
  unit: LengthUnit
  /** Unit in which sentences say lengths. */
  sayIn: LengthUnit
  type: BandBearing
  limits: PlaceLimits
  settings: SiteSettings
  byFeel: boolean
  /** The zero point was found by resistance, or the seat is a tapered journal. */
  travelTrusted: boolean
  /** Pitch of the nut's thread, where known. */
  pitchMm: number | null
  /** The row of the open step that is being typed in: a nought there is the beginning of a number. */
  typing: 'A' | 'B' | null
  /** The stacks that the blades of the set make; null without a set. */
  stacks: readonly BladeStack[] | null
}

export interface DriveUpState {
  guidance: DriveUpGuidance
  gauge: GaugeInput
  /** A reading of the newest step, or of the bench, is unlikely and nobody has said yet that it is meant. */
  asks: boolean
}

/** What the typed steps of a drive-up say. Struck ones and open questions do not count. */
export function driveUpState(question: DriveUpQuestion): DriveUpState {
  const { type, limits, settings, unit } = question
  const read = (pairs: readonly ReadingPair[]): RowReading[] =>
    pairs.flatMap((pair) => countedIn(pair, unit, type.boreMm))
  const bench = read(question.bench)
  const counted = question.steps.filter(({ struck }) => !struck).map((step) => begun(step, question))
  const steps = counted.map((step) => ({
    readings: read([step.pair]),
    travelMm: typedNumber(step.driveUpMm, rowNumbers.driveUpMm),
    nutAngleDeg: typedNumber(step.nutAngleDeg, rowNumbers.nutAngleDeg),
  }))
  const guidance = driveUpGuidance({
    // the clearance tables hold for spherical roller bearings; of another kind the series says so
    bearing: { ...type, series: type.kind === 'spherical-roller' ? null : type.series },
    bench,
    steps,
    band: limits.band,
    noBand: limits.noBand,
    residualMinimum: limits.residualMinimum,
    byFeel: question.byFeel,
    travelTrusted: question.travelTrusted,
    pitchMm: question.pitchMm,
    stacks: question.stacks,
    settings: verdictSettings(settings),
    unit: question.sayIn,
  })
  const asked = [...question.bench, ...counted.slice(-1).map(({ pair }) => pair)]
  return {
    guidance,
    gauge: gaugeOf(limits, bench, steps, guidance),
    asks: asked.some((pair) => [pair.A, pair.B].some((typed) => isOpen(typed, unit, type.boreMm))),
  }
}

/** The open step without a number of which only the noughts are typed yet. */
function begun(step: TypedStep, { steps, typing }: DriveUpQuestion): TypedStep {
  if (typing === null || step !== steps.at(-1) || !/^[0.,\s]*$/.test(step.pair[typing].text)) return step
  return { ...step, pair: { ...step.pair, [typing]: emptyPair()[typing] } }
}

/** How a typed reading of a step reads; null while nothing is typed. */
export function answerTo({ text }: TypedReading, unit: LengthUnit, boreMm: number): ReadingAnswer | null {
  return text.trim() === '' ? null : readReading(text, unit, boreMm)
}

/** Where the next step is typed: the last one while it counts, else a new one behind it. */
export function openStepAt(steps: readonly TypedStep[]): number {
  const last = steps.at(-1)
  return last && !last.struck ? steps.length - 1 : steps.length
}

export function emptyStep(): TypedStep {
  return { pair: emptyPair(), driveUpMm: '', nutAngleDeg: '', struck: false }
}

function countedIn(pair: ReadingPair, unit: LengthUnit, boreMm: number): RowReading[] {
  return (['A', 'B'] as const).flatMap((row) => {
    const answer = answerTo(pair[row], unit, boreMm)
    if (!answer || answer.kind === 'refused' || isOpenQuestion({ answer, meant: pair[row].meant })) return []
    return [{ row, um: answer.valueUm }]
  })
}

function isOpen(typed: TypedReading, unit: LengthUnit, boreMm: number): boolean {
  const answer = answerTo(typed, unit, boreMm)
  return answer !== null && isOpenQuestion({ answer, meant: typed.meant })
}

function gaugeOf(
  { band, classUm, residualMinimum }: PlaceLimits,
  bench: readonly RowReading[],
  steps: readonly { readings: readonly RowReading[] }[],
  guidance: DriveUpGuidance,
): GaugeInput {
  const onBench = bearingReading(bench, 'bench')
  const benchUm = onBench.kind === 'reading' ? onBench.reading.meanUm : null
  const aim = guidance.kind === 'guided' ? guidance.window.aim : null
  return {
    benchUm,
    bandUm: band && { minUm: band.minUm, maxUm: band.maxUm },
    classUm,
    residualMinUm: residualMinimum?.minUm ?? null,
    readings: steps.flatMap(({ readings }, step) => readings.map((reading) => ({ ...reading, step }))),
    meanUm: guidance.kind === 'guided' ? (guidance.now?.reading.meanUm ?? null) : null,
    doubted: guidance.kind === 'guided' && guidance.advice === 'read-again',
    aimUm: aim && benchUm !== null ? { minUm: benchUm - aim.maxUm, maxUm: benchUm - aim.minUm } : null,
  }
}
