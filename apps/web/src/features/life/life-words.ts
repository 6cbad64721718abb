import type { LifeSummary } from '@shaftbook/contract/life'
import type { EndKind } from '@shaftbook/contract/removals'
import { formatCount } from '../../lib/format-count.ts'

export const endKindWords: Readonly<Record<EndKind, string>> = {
  failed: 'Failed',
  'not-failed': 'Removed, not failed',
  lost: 'End not known',
}

/** A failure mode of ISO 15243 by its term; many removals have none. */
export function modeWords(mode: { modeClause: string | null; modeTerm: string | null }): string {
  return mode.modeTerm ?? mode.modeClause ?? 'Mode not written down'
}

/** All run hours that the book knows of, of ended and of running bearings. */
export function hoursOnRecord({ hours }: LifeSummary): number {
  return hours.metered + hours.estimated + hours.running
}

/** What the lives add up to, in a sentence. */
export function lifeSentence(summary: LifeSummary): string {
  const stays = summary.failures + summary.notFailed + summary.lost + summary.running
  if (stays === 0) return 'No bearing is on record yet.'
  const failures = `${formatCount(summary.failures)} ${summary.failures === 1 ? 'failure' : 'failures'}`
  return `${failures} in ${formatCount(hoursOnRecord(summary))} run hours on record, over ${formatCount(stays)} ${stays === 1 ? 'bearing' : 'bearings'}.`
}

/** What the chart of modes shows, in a sentence with its numbers. */
export function modesSentence({ byMode, failures }: LifeSummary): string {
  const known = byMode.filter(({ modeClause }) => modeClause !== null)
  const [most] = known
  const unknown = byMode.find(({ modeClause }) => modeClause === null)?.failures ?? 0
  const without = unknown > 0 ? ` ${formatCount(unknown)} of ${formatCount(failures)} have no mode written down.` : ''
  if (!most) return `No failure has its mode written down yet.${without}`
  const level = known.filter((mode) => mode.failures === most.failures)
  const names = level.map((mode) => modeWords(mode).toLowerCase()).join(' and ')
  return `Most often: ${names}, ${formatCount(most.failures)} of ${formatCount(failures)} failures${level.length > 1 ? ' each' : ''}.${without}`
}
