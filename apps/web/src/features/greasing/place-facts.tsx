import type { PositionOverview } from '@shaftbook/contract/position-views'
import { formatCount } from '../../lib/format-count.ts'
import { formatDay } from '../../lib/format-day.ts'
import { useToday } from '../../lib/use-today.ts'
import { useSite } from '../../session/site-access.tsx'
import { DefinitionList, type Definition } from '../../ui/definition-list.tsx'
import { DueMark } from '../../ui/due-mark.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { entryWords } from './entry-words.ts'
import { dueDistance, dueReason } from './due-words.ts'

/** Where it is, which grease, and how it stands with the plan. */
export function PlaceFacts({ place }: { place: PositionOverview }) {
  const { site } = useSite()
  const today = useToday(site.timeZone)
  const { machine, position, plan, due } = place
  const items: Definition[] = [
    { label: 'Where', value: `${machine.name}, ${position.name.toLowerCase()}` },
    plan
      ? { label: 'Grease', value: plan.greaseName, note: entryWords[plan.entry] }
      : { label: 'Grease', value: 'no plan', note: 'Ask the engineer for a plan.' },
    ...(due
      ? [
          {
            label: 'State',
            value: <DueMark state={due.state} />,
            note: `${dueDistance(due, today)}, ${formatDay(due.dueOn)}, ${dueReason(due)}`,
          },
          {
            label: 'Last greased',
            value: due.lastGreasedAt ? <Timestamp at={due.lastGreasedAt} timeZone={site.timeZone} /> : 'never',
            note: `Every ${formatCount(due.intervalHours)} run hours or ${due.calendarMonths} months`,
          },
        ]
      : []),
  ]
  return <DefinitionList items={items} />
}
