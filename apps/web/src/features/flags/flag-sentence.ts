import type { Flag, FlagFacts, FlagKind } from '@shaftbook/contract/flags'
import { formatCount } from '../../lib/format-count.ts'
import { daysBetween, formatDay } from '../../lib/format-day.ts'

export interface LengthWords {
  length: (um: number) => string
  lengthRange: (fromUm: number, toUm: number) => string
}

export interface FlagSentence {
  /** How late or how far out, in few words; where the kind has a verdict, it follows the verdict's word: "Over" + "by 0.012 mm". */
  readonly measure: string
  /** The numbers behind it. */
  readonly detail: string
}

/** How late or how far out a flag is, on the plant's day `today`, in the person's units. */
export function flagSentence(flag: Pick<Flag, 'kind' | 'facts'>, words: LengthWords, today: string): FlagSentence {
  const said = sentences[flag.kind](flag.facts, words, today)
  const { doAgainReason } = flag.facts
  return doAgainReason === undefined
    ? said
    : { ...said, detail: sentence([said.detail, `to be mounted again: ${doAgainReason}`]) }
}

type Sentence = (facts: FlagFacts, words: LengthWords, today: string) => FlagSentence

const oneLocates = 'Exactly one position of a shaft locates it'

const sentences: Readonly<Record<FlagKind, Sentence>> = {
  'greasing-overdue': (facts, _words, today) => overdue(facts, today),
  'task-overdue': (facts, _words, today) => taskOverdue(facts, today),
  'plan-review': planReview,
  'running-hot': runningHot,
  'vibration-rise': vibrationRise,
  'grease-change-open': changeOpen,
  'never-greased': (facts, _words, today) => neverGreased(facts, today),
  'mount-over': (facts, words) => outOfBand(facts, words, 'over'),
  'mount-under': (facts, words) => outOfBand(facts, words, 'under'),
  'mount-not-proven': notProven,
  'residual-too-small': tooSmall,
  'residual-not-proven': residualNotProven,
  'no-mount-record': (facts) => ({ measure: 'Not measured, or not written down', detail: bearing(facts) }),
  'no-locating': () => ({ measure: 'Nothing holds the shaft axially', detail: oneLocates }),
  'several-locating': several,
}

function overdue(facts: FlagFacts, today: string): FlagSentence {
  if (facts.dueOn == null) return { measure: 'Overdue', detail: greaseWanted(facts) }
  return {
    measure: `${late(facts.dueOn, today)}${facts.estimated ? ', estimated' : ''}`,
    detail: sentence([`Due ${formatDay(facts.dueOn)} ${dueBy(facts)}`, greaseWanted(facts)]),
  }
}

const tasks = {
  regrease: 'Regreasing',
  refill: 'Refill of the lubricator',
  'check-system': 'Check of the central system',
  'check-oil': 'Check of the oil level',
  'change-oil': 'Change of oil',
  'turn-shaft': 'Turning of the shaft',
} as const

function taskOverdue(facts: FlagFacts, today: string): FlagSentence {
  const { measure, detail } = overdue(facts, today)
  return { measure, detail: sentence([facts.task ? tasks[facts.task] : '', detail]) }
}

function planReview(facts: FlagFacts): FlagSentence {
  const { dutyChanged, intervalHours, proposedIntervalHours, doseG, proposedDoseG, reviewOn } = facts
  const proposals = [
    proposedIntervalHours === undefined || intervalHours === undefined
      ? ''
      : `the plan says every ${formatCount(intervalHours)} h, the register of today ${formatCount(proposedIntervalHours)} h`,
    proposedDoseG === undefined || doseG === undefined
      ? ''
      : `the plan says ${doseG} g, the register of today ${proposedDoseG} g`,
  ]
  const measure =
    dutyChanged || reviewOn === undefined ? 'The duty has changed' : `To be looked at on ${formatDay(reviewOn)}`
  return { measure, detail: sentence(proposals) }
}

function runningHot({ observedC, usualC }: FlagFacts): FlagSentence {
  if (observedC === undefined || usualC === undefined) return { measure: '', detail: '' }
  return {
    measure: `${formatTenths(observedC - usualC)} K above its usual`,
    detail: `${formatTenths(observedC)} °C was read, ${formatTenths(usualC)} °C is usual here`,
  }
}

function vibrationRise({ observedMmS, usualMmS, zone }: FlagFacts): FlagSentence {
  const read = observedMmS === undefined ? '' : `${formatTenths(observedMmS)} mm/s was read`
  const usual = usualMmS === undefined ? '' : `${formatTenths(usualMmS)} mm/s is usual here`
  return { measure: zone === undefined ? 'More than usual' : `Zone ${zone}`, detail: sentence([read, usual], ', ') }
}

const waitsFor = { lab: 'waits for the lab', strip: 'to be stripped and filled anew', flush: 'being flushed' } as const

function changeOpen({ changeState, fromGreaseName, toGreaseName, dosesLeft }: FlagFacts): FlagSentence {
  const state = changeState === 'lab' || changeState === 'strip' || changeState === 'flush' ? waitsFor[changeState] : ''
  const left = dosesLeft === undefined ? '' : `${dosesLeft} ${dosesLeft === 1 ? 'dose' : 'doses'} left`
  return {
    measure: `${fromGreaseName ?? 'The old grease'} to ${toGreaseName ?? 'another'}`,
    detail: sentence([state, left], ', '),
  }
}

function formatTenths(value: number): string {
  return String(Math.round(value * 10) / 10)
}

function late(dueOn: string, today: string): string {
  const days = daysBetween(dueOn, today)
  if (days <= 0) return 'Due today'
  return days === 1 ? '1 day late' : `${formatCount(days)} days late`
}

function dueBy(facts: FlagFacts): string {
  if (facts.dueBy !== 'hours') return 'by the calendar'
  const at = facts.dueRunHours == null ? 'by run hours' : `at ${formatCount(facts.dueRunHours)} run hours`
  return facts.estimated ? `${at}, the day estimated from average use` : at
}

function neverGreased(facts: FlagFacts, today: string): FlagSentence {
  const since = facts.dueOn == null ? null : daysBetween(facts.dueOn, today)
  return {
    measure:
      since !== null && since > 0 ? `No greasing on record, ${late(facts.dueOn!, today)}` : 'No greasing on record',
    detail: sentence(
      [greaseWanted(facts), facts.intervalHours === undefined ? '' : `every ${formatCount(facts.intervalHours)} h`],
      ' ',
    ),
  }
}

function greaseWanted({ doseG, greaseName }: FlagFacts): string {
  if (doseG === undefined) return ''
  return `${doseG} g${greaseName ? ` of ${greaseName}` : ''}`
}

function outOfBand(facts: FlagFacts, words: LengthWords, side: 'over' | 'under'): FlagSentence {
  const { reductionUm, bandMinUm, bandMaxUm } = facts
  const limitUm = side === 'over' ? bandMaxUm : bandMinUm
  if (reductionUm === undefined || limitUm === undefined) return { measure: '', detail: bearing(facts) }
  return {
    measure: `by ${words.length(Math.abs(reductionUm - limitUm))}`,
    detail: sentence([`Reduced by ${words.length(reductionUm)}`, band(facts, words)]),
  }
}

function notProven(facts: FlagFacts, words: LengthWords): FlagSentence {
  const { reductionUm, expandedUncertaintyUm } = facts
  if (reductionUm === undefined)
    return { measure: 'with this gauge', detail: sentence([bearing(facts), band(facts, words)]) }
  const give = expandedUncertaintyUm === undefined ? '' : ` ± ${words.length(expandedUncertaintyUm)}`
  return {
    measure: 'with this gauge',
    detail: sentence([`Reduced by ${words.length(reductionUm)}${give}`, band(facts, words)]),
  }
}

function tooSmall(facts: FlagFacts, words: LengthWords): FlagSentence {
  const { mountedMeanUm, residualMinUm } = facts
  if (mountedMeanUm === undefined || residualMinUm === undefined) return { measure: '', detail: bearing(facts) }
  const shortUm = residualMinUm - mountedMeanUm
  return {
    measure: shortUm > 0 ? `by ${words.length(shortUm)}` : '',
    detail: `${words.length(mountedMeanUm)} left, the least is ${words.length(residualMinUm)}`,
  }
}

function residualNotProven(facts: FlagFacts, words: LengthWords): FlagSentence {
  const { mountedMeanUm, residualMinUm } = facts
  if (mountedMeanUm === undefined || residualMinUm === undefined)
    return { measure: 'with this gauge', detail: bearing(facts) }
  return {
    measure: 'with this gauge',
    detail: `${words.length(mountedMeanUm)} left, too near the least of ${words.length(residualMinUm)}`,
  }
}

function band({ bandMinUm, bandMaxUm, bandSource }: FlagFacts, words: LengthWords): string {
  if (bandMinUm === undefined || bandMaxUm === undefined) return ''
  return `band ${words.lengthRange(bandMinUm, bandMaxUm)}${bandSource ? ` (${bandSource})` : ''}`
}

function several({ locatingTags = [] }: FlagFacts): FlagSentence {
  return {
    measure: `${locatingTags.length} positions hold the shaft`,
    detail: locatingTags.length > 0 ? `Marked as locating: ${locatingTags.join(', ')}` : oneLocates,
  }
}

function bearing({ designation }: FlagFacts): string {
  return designation ? `${designation} is fitted` : ''
}

function sentence(parts: readonly string[], joint = '; '): string {
  return parts.filter((part) => part !== '').join(joint)
}
