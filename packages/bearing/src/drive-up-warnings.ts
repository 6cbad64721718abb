import type { ClassCheck } from './clearance.ts'
import type { AdviceReason } from './drive-up-advice.ts'
import type { GuidanceInput, ReadStep } from './drive-up-steps.ts'
import type { TravelFacts } from './drive-up-travel.ts'
import type { DriveUpWindow, FeelerTarget } from './drive-up-window.ts'
import type { BearingReading } from './readings.ts'
import type { MountUncertainty } from './uncertainty.ts'
import { formatLength, toNanometres, type LengthUnit } from './units.ts'
import type { VerdictSettings } from './verdict.ts'

export type GuidanceWarningCode =
  | 'bench-outside-class'
  | 'bench-rows-differ'
  | 'rows-differ'
  | 'row-past-far-edge'
  | 'no-residual-minimum'
  | 'least-clearance-before-band'
  | 'residual-not-provable'
  | 'band-not-provable'
  | 'less-than-before'
  | 'travel-does-not-fit'
  | 'zero-not-verified'
  | 'blades-too-coarse'

/** Something to look at beside the advice. */
export interface GuidanceWarning {
  code: GuidanceWarningCode
  sentence: string
  rule: string
}

interface WarningInput {
  input: GuidanceInput
  settings: VerdictSettings
  window: DriveUpWindow
  bench: BearingReading
  now: ReadStep | null
  classCheck: ClassCheck
  travel: TravelFacts
  uncertainty: MountUncertainty
  feelers: FeelerTarget | null
  reason: AdviceReason
  unit: LengthUnit
}

type Warned = GuidanceWarning | false | null

/** Everything that a person has to look at, most pressing first. R-ROW, R-RES, R-U, R-RATIO, R-CL2. */
export function guidanceWarnings(facts: WarningInput): GuidanceWarning[] {
  const say = (um: number): string => formatLength(um, facts.unit)
  const all: Warned[] = [
    ...roomWarnings(facts, say),
    facts.reason === 'less-than-before' &&
      warn('less-than-before', 'R-RED', 'The reduction went down: a roller was not seated, or a row was mixed up.'),
    ...rowWarnings(facts, say),
    ...travelWarnings(facts),
    ...gaugeWarnings(facts, say),
  ]
  return all.filter((warning): warning is GuidanceWarning => Boolean(warning))
}

function roomWarnings({ input, window, settings, uncertainty }: WarningInput, say: (um: number) => string): Warned[] {
  const { residualMinimum } = input
  if (residualMinimum === null)
    return [
      warn(
        'no-residual-minimum',
        'R-RES',
        'There is no residual minimum for this bearing: the engineer has to give one.',
      ),
      window.noRoom && warn('least-clearance-before-band', 'R-RED', 'The band takes out more clearance than there is.'),
    ]
  const least = say(residualMinimum.minUm)
  if (window.noRoom) {
    const sentence = `At least ${least} must be left, and the band can’t be reached with that: another band or another bearing, the engineer decides.`
    return [warn('least-clearance-before-band', 'R-RES', sentence)]
  }
  const proven = nm(window.roomUm) - nm(uncertainty.expandedMountedUm) >= nm(window.nearUm)
  if (proven || settings.residualRule === 'simple') return []
  const sentence = `Anywhere in the window this gauge can’t prove that ${least} is left: read more places, and stop at the near edge.`
  return [warn('residual-not-provable', 'R-RES', sentence)]
}

function rowWarnings({ bench, now, window, classCheck }: WarningInput, say: (um: number) => string): Warned[] {
  const differ = (reading: BearingReading, where: string): string =>
    `The two rows differ by ${say(reading.rowDifferenceUm)} ${where}: turn the ring so that the rollers seat, and read again.`
  const far = nm(window.farUm)
  const past =
    now && nm(now.reductionUm) <= far ? (['A', 'B'] as const).filter((row) => nm(now.rowReductionUm[row]) > far) : []
  return [
    !bench.rowsAgree && warn('bench-rows-differ', 'R-ROW', differ(bench, 'on the bench')),
    now && !now.reading.rowsAgree ? warn('rows-differ', 'R-ROW', differ(now.reading, 'now')) : null,
    past.length > 0 &&
      warn('row-past-far-edge', 'R-ROW', `Row ${past.join(' and ')} alone is past the far edge of the window already.`),
    classCheck.verdict !== 'no-row' &&
      classCheck.verdict !== 'inside' &&
      warn('bench-outside-class', 'R-CL2', classCheck.cautions.at(-1) ?? 'The bench clearance is outside its class.'),
  ]
}

function travelWarnings({ input, now, travel }: WarningInput): Warned[] {
  const { verdict, ratio, lowest, highest } = travel.check
  const unverified =
    now?.travelMm !== undefined &&
    now.travelMm !== null &&
    input.travelTrusted !== true &&
    warn(
      'zero-not-verified',
      'R-RATIO',
      'Travel and angle count only from a zero point found by resistance: the clearance decides.',
    )
  if (verdict !== 'too-low' && verdict !== 'too-high') return [unverified]
  const range = `${lowest} to ${highest}`
  const zero = {
    'too-early': 'The steps among themselves fit, so the zero point was taken too early.',
    'too-late': 'The steps among themselves fit, so the zero point was taken too late.',
    fits: '',
    'not-told':
      verdict === 'too-low'
        ? 'That is impossible for steel: a reading or the zero point is wrong.'
        : 'The sleeve creeps, the shaft is hollow, the start was loose, or the bench reading is wrong.',
  }[travel.zero]
  const sentence = `Travel over reduction is ${ratio?.toFixed(1) ?? 'not known'}, usual is ${range}. ${zero}`.trim()
  return [warn('travel-does-not-fit', 'R-RATIO', sentence), unverified]
}

function gaugeWarnings({ input, window, uncertainty, feelers }: WarningInput, say: (um: number) => string): Warned[] {
  const guard = say(uncertainty.expandedDifferenceUm)
  return [
    !window.provable &&
      warn(
        'band-not-provable',
        'R-U',
        `This gauge (± ${guard}) cannot prove this band: take more readings, or compare the travel from a verified zero.`,
      ),
    Boolean(input.stacks && input.stacks.length > 0 && !window.noRoom && feelers === null) &&
      warn('blades-too-coarse', 'R-U', 'The blades of this set have no two thicknesses inside the window.'),
  ]
}

function warn(code: GuidanceWarningCode, rule: string, sentence: string): GuidanceWarning {
  return { code, rule, sentence }
}

function nm(um: number): number {
  return toNanometres(um, 'um')
}
