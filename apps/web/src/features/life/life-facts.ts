import type { LifeSummary } from '@shaftbook/contract/life'
import { formatCount } from '../../lib/format-count.ts'
import type { Definition } from '../../ui/definition-list.tsx'
import { hoursOnRecord } from './life-words.ts'

/** The totals, as they stand in the head of the page. */
export function lifeFacts(summary: LifeSummary): Definition[] {
  const { hours } = summary
  const notes = [
    hours.estimated > 0 ? `${formatCount(hours.estimated)} h estimated` : '',
    hours.staysWithout > 0 ? `${formatCount(hours.staysWithout)} bearings without hours` : '',
  ].filter((note) => note !== '')
  return [
    { label: 'Failed', value: formatCount(summary.failures) },
    { label: 'Removed, not failed', value: formatCount(summary.notFailed) },
    { label: 'End not known', value: formatCount(summary.lost) },
    { label: 'Still running', value: formatCount(summary.running) },
    { label: 'Run hours on record', value: formatCount(hoursOnRecord(summary)), unit: 'h', note: notes.join('; ') },
  ]
}
