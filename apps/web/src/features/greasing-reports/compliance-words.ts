import type { ComplianceGrouping, ComplianceTally, GreasingCompliance } from '@shaftbook/contract/greasing-reports'
import { formatCount } from '../../lib/format-count.ts'

/** How far back compliance can look, in months, as the address says it. */
export const compliancePeriods = ['3', '12', '24', '36'] as const

/** The first day of the period: the first of the month so many months back, the running one counted. */
export function periodStart(today: string, months: string): string {
  const [year, month] = today.split('-').map(Number) as [number, number]
  return new Date(Date.UTC(year, month - Number(months), 1)).toISOString().slice(0, 10)
}

/** Fewer windows than this say little. */
const few = 10

/** How a share of few windows is to be read; undefined where there are enough. */
export function fewWords({ windowsDue }: Pick<ComplianceTally, 'windowsDue'>): string | undefined {
  if (windowsDue === 0 || windowsDue >= few) return undefined
  const points = Math.round(100 / windowsDue)
  return `Only ${windowsDue} ${windowsDue === 1 ? 'window' : 'windows'}: one more or less moves it by ${points} points.`
}

/** "81 %", or that there is nothing to count. */
export function percentText({ percent }: Pick<ComplianceTally, 'percent'>): string {
  return percent === null ? 'none due' : `${Math.round(percent)} %`
}

/** What the period comes to, in sentences with its numbers. */
export function complianceSentence({ total }: Pick<GreasingCompliance, 'total'>): string {
  if (total.windowsDue === 0) return 'No window was due in this period.'
  const first = `${percentText(total)} of the windows were met: ${formatCount(total.met)} of ${formatCount(total.windowsDue)}.`
  const early = total.early === 0 ? '' : ` ${formatCount(total.early)} more were greased before their window.`
  const small = fewWords(total)
  return `${first}${early}${small ? ` ${small}` : ''}`
}

export const groupingWords: Readonly<Record<ComplianceGrouping, string>> = {
  area: 'Area',
  position: 'Position',
  person: 'Person',
  round: 'Round',
}

export interface ResultSeries {
  key: 'met' | 'late' | 'wrongAmount' | 'missed' | 'notDone'
  words: string
  fill: string
}

/** What a due window comes to, the good below. */
export const resultSeries: readonly ResultSeries[] = [
  { key: 'met', words: 'On time', fill: 'var(--inside)' },
  { key: 'late', words: 'Late', fill: 'var(--under)' },
  { key: 'wrongAmount', words: 'Wrong amount', fill: 'var(--not-proven)' },
  { key: 'missed', words: 'Window missed', fill: 'var(--over)' },
  { key: 'notDone', words: 'No greasing at all', fill: 'var(--ink-soft)' },
]

/** "Nov 2026" of the first day of a month. */
export function monthWords(month: string): string {
  return new Intl.DateTimeFormat('en-GB', { month: 'short', year: 'numeric', timeZone: 'UTC' }).format(
    new Date(`${month}T00:00:00Z`),
  )
}
