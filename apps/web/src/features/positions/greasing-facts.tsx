import type { PositionOverview } from '@shaftbook/contract/position-views'
import { formatCount } from '../../lib/format-count.ts'
import { daysBetween, formatDay } from '../../lib/format-day.ts'
import { useToday } from '../../lib/use-today.ts'
import { useSite } from '../../session/site-access.tsx'
import { DefinitionList, type Definition } from '../../ui/definition-list.tsx'
import { DueMark } from '../../ui/due-mark.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import classes from './position-page.module.css'

const entries = { side: 'from the side', 'outer-ring-groove': 'through the groove of the outer ring' } as const

const ways = {
  gun: 'regreased by gun',
  sealed: 'sealed for life: nothing to do',
  automatic: 'automatic lubricator, refilled',
  central: 'centralised system, checked',
  oil: 'oil',
} as const

function taskNote(due: PositionOverview['tasks'][number] | undefined, sealed: boolean, today: string) {
  if (due) return dueWords(due, today)
  return sealed ? undefined : 'not due while nothing is fitted'
}

/** What the position gets, what it got last, and when it is due again. */
export function GreasingFacts({ place, lastGreasedAt }: { place: PositionOverview; lastGreasedAt: string | null }) {
  const { site } = useSite()
  const today = useToday(site.timeZone)
  const { plan, due } = place
  if (!plan && place.plans.length > 0)
    return (
      <DefinitionList
        items={place.plans.map(({ id, way, task }) => ({
          label: 'Plan',
          value: way === null ? 'turned by hand while it stands by' : ways[way],
          note: taskNote(
            place.tasks.find(({ planId }) => planId === id),
            task === null,
            today,
          ),
        }))}
      />
    )
  if (!plan)
    return (
      <p className={classes.soft}>
        No grease plan: the book cannot say when this position is due. An engineer sets it.
      </p>
    )
  const items: Definition[] = [
    {
      label: 'Plan',
      value: `${plan.doseG} g of ${plan.greaseName}, ${entries[plan.entry]}`,
      note: `every ${formatCount(plan.intervalHours)} run hours, at the latest after ${months(plan.calendarMonths)}`,
    },
    {
      label: 'Last',
      value: lastGreasedAt ? (
        <Timestamp at={lastGreasedAt} timeZone={site.timeZone} dateOnly />
      ) : (
        'no greasing on record'
      ),
    },
    {
      label: 'Next',
      value: due ? <DueMark state={due.state} /> : place.fitment ? null : 'not due while nothing is fitted',
      note: due && dueWords(due, today),
    },
  ]
  return <DefinitionList items={items} />
}

function months(count: number): string {
  return count === 1 ? '1 month' : `${count} months`
}

function dueWords(due: NonNullable<PositionOverview['due']>, today: string): string {
  const days = daysBetween(due.dueOn, today)
  const late = days > 0 ? `, ${formatCount(days)} ${days === 1 ? 'day' : 'days'} late` : days === 0 ? ', today' : ''
  if (due.dueBy === 'never-greased') return `since it was fitted, ${formatDay(due.dueOn)}`
  if (due.dueBy === 'calendar') return `${formatDay(due.dueOn)} by the calendar${late}`
  const at = due.dueRunHours === null ? 'by run hours' : `at ${formatCount(due.dueRunHours)} run hours`
  return `${formatDay(due.dueOn)} ${at}${due.estimated ? ', the day estimated' : ''}${late}`
}
