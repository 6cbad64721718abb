import type { GreaseTask } from '@shaftbook/contract/grease-plans'
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
import { everyWords, taskWords } from './task-words.ts'

/** Where it is, what goes in, and how it stands with the plan of the task. */
export function PlaceFacts({ place, task }: { place: PositionOverview; task: GreaseTask }) {
  const { machine, position } = place
  const items: Definition[] = [
    { label: 'Where', value: `${machine.name}, ${position.name.toLowerCase()}` },
    whatOf(place, task),
    ...useDueFacts(place, task),
  ]
  return <DefinitionList items={items} />
}

function whatOf({ plans }: PositionOverview, task: GreaseTask): Definition {
  const sealed = plans.some(({ way }) => way === 'sealed')
  const plan = plans.find((each) => each.task === task)
  if (task === 'regrease' && sealed && !plan)
    return { label: 'Grease', value: 'none: sealed for life', note: 'It takes no grease. Check the position.' }
  if (!plan) return { label: 'Plan', value: 'no plan', note: 'Ask the engineer for a plan.' }
  if (plan.greaseName !== null)
    return { label: 'Grease', value: plan.greaseName, note: plan.entry ? entryWords[plan.entry] : undefined }
  return { label: 'Task', value: taskWords[task], note: plan.oil || undefined }
}

function useDueFacts({ tasks }: PositionOverview, task: GreaseTask): Definition[] {
  const { site } = useSite()
  const today = useToday(site.timeZone)
  const due = tasks.find((each) => each.task === task)
  if (!due) return []
  return [
    {
      label: 'State',
      value: <DueMark state={due.state} />,
      note: `${dueDistance(due, today)}, ${formatDay(due.dueOn)}, ${dueReason(due)}`,
    },
    {
      label: 'Last done',
      value: due.lastGreasedAt ? <Timestamp at={due.lastGreasedAt} timeZone={site.timeZone} /> : 'never',
      note: everyWords(due, formatCount),
    },
  ]
}
