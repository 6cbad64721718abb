import { createGreasing, type DueItem } from '@shaftbook/contract/greasing'
import type { GreasePlan } from '@shaftbook/contract/grease-plans'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { formatCount } from '../../lib/format-count.ts'
import { formatDay } from '../../lib/format-day.ts'
import { useToday } from '../../lib/use-today.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { DefinitionList, type Definition } from '../../ui/definition-list.tsx'
import { DueMark } from '../../ui/due-mark.tsx'
import { AppLink } from '../../ui/link.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { dueDistance, dueReason } from './due-words.ts'
import { entryWords } from './entry-words.ts'
import { taskActs } from './task-acts.ts'
import { everyWords, planTitle } from './task-words.ts'
import classes from './position-tasks.module.css'

interface PositionTasksProps {
  place: PositionOverview
  /** Of the history, which knows a greasing that no plan asked for. */
  lastGreasedAt: string | null
}

/** Everything that is done at the position again and again: what, when last, when next. */
export function PositionTasks({ place, lastGreasedAt }: PositionTasksProps) {
  const { plans, tasks } = place
  if (plans.length === 0)
    return <p className={classes.soft}>No plan: the book cannot say when this position is due. An engineer sets it.</p>
  return (
    <div className={classes.tasks}>
      {plans.map((plan) => (
        <OneTask
          key={plan.id}
          plan={plan}
          due={tasks.find(({ planId }) => planId === plan.id) ?? null}
          place={place}
          lastAt={plan.task === 'regrease' ? lastGreasedAt : null}
        />
      ))}
    </div>
  )
}

interface OneTaskProps {
  plan: GreasePlan
  due: DueItem | null
  place: PositionOverview
  lastAt: string | null
}

function OneTask({ plan, due, place, lastAt }: OneTaskProps) {
  const { code, may } = useSite()
  const { position, fitment } = place
  const { task } = plan
  const logged = task !== null && task !== 'regrease' && fitment !== null && position.retiredAt === null
  return (
    <section aria-label={planTitle(plan)}>
      <h3 className={classes.head}>
        <span>{planTitle(plan)}</span>
        {logged && may(createGreasing) && (
          <AppLink href={paths.logGreasing(code, position.id, task)}>{taskActs[task].log}</AppLink>
        )}
      </h3>
      <DefinitionList items={useFacts({ plan, due, place, lastAt })} />
    </section>
  )
}

function useFacts({ plan, due, place, lastAt }: OneTaskProps): Definition[] {
  const { site } = useSite()
  const today = useToday(site.timeZone)
  if (plan.task === null) return [{ label: 'Plan', value: 'nothing is put in', note: plan.reason }]
  const last = due?.lastGreasedAt ?? lastAt
  return [
    { label: 'Plan', value: amountOf(plan), note: noteOf(plan) },
    { label: 'Last', value: last ? <Timestamp at={last} timeZone={site.timeZone} dateOnly /> : 'not on record' },
    {
      label: 'Next',
      value: due ? <DueMark state={due.state} /> : place.fitment ? null : 'not due while nothing is fitted',
      note: due && `${formatDay(due.dueOn)}, ${dueDistance(due, today)}, ${dueReason(due)}`,
    },
  ]
}

function amountOf(plan: GreasePlan): string {
  const { doseG, greaseName, oil, entry } = plan
  if (doseG === null) return oil || everyWords(plan, formatCount)
  return `${doseG} g of ${greaseName}${entry ? `, ${entryWords[entry]}` : ''}`
}

function noteOf(plan: GreasePlan): string | undefined {
  const every = everyWords(plan, formatCount)
  return amountOf(plan) === every ? undefined : every
}
