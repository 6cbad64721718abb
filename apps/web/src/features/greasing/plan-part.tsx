import { Button } from '@mantine/core'
import { createGreasePlan, isGunPlan, type GreasePlan } from '@shaftbook/contract/grease-plans'
import { dutyOf } from '@shaftbook/contract/plan-duty'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { formatCount } from '../../lib/format-count.ts'
import { formatDay } from '../../lib/format-day.ts'
import { useToday } from '../../lib/use-today.ts'
import { useSite } from '../../session/site-access.tsx'
import { DefinitionList, type Definition } from '../../ui/definition-list.tsx'
import { DueMark } from '../../ui/due-mark.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { dueDistance, dueReason } from './due-words.ts'
import { entryWords } from './entry-words.ts'
import { FactorTable } from './factor-table.tsx'
import { reviewsQuery } from './greasing-queries.ts'
import { KeepPlan } from './keep-plan.tsx'
import { PlanProposalPart } from './plan-proposal.tsx'
import { everyWords, planTitle } from './task-words.ts'
import classes from './greasing-dialog.module.css'

interface PlanPartProps {
  plan: GreasePlan
  place: PositionOverview
  onWhatIf: () => void
  onChange: () => void
  onEnd: () => void
}

/** One plan of a position: what, how much, how often, why so often, and how it stands. */
export function PlanPart({ plan, place, onWhatIf, onChange, onEnd }: PlanPartProps) {
  const { site, may } = useSite()
  const today = useToday(site.timeZone)
  const due = place.tasks.find(({ planId }) => planId === plan.id)
  const duty = isGunPlan(plan) ? dutyOf(plan) : null
  const title = planTitle(plan)
  const flagged = place.flags.some(
    ({ kind, facts }) => kind === 'plan-review' && (facts.task === undefined || facts.task === plan.task),
  )
  const stands: Definition[] = due
    ? [
        {
          label: 'Next',
          value: <DueMark state={due.state} />,
          note: `${dueDistance(due, today)}, ${formatDay(due.dueOn)}, ${dueReason(due)}`,
        },
      ]
    : []
  return (
    <section className={classes.plan} aria-label={title}>
      <h3 className={classes.heading}>{title}</h3>
      {flagged && <Review plan={plan} place={place} />}
      <DefinitionList items={[...factsOf(plan, site.timeZone), ...stands]} />
      {duty && <FactorTable duty={duty} />}
      <Kept planId={plan.id} />
      <div className={classes.row}>
        {duty && (
          <Button variant="default" onClick={onWhatIf}>
            What if
          </Button>
        )}
        {may(createGreasePlan) && (
          <>
            <Button variant="default" onClick={onChange} aria-label={`Change: ${title}`}>
              Change
            </Button>
            <Button variant="default" onClick={onEnd} aria-label={`End: ${title}`}>
              End
            </Button>
          </>
        )}
      </div>
    </section>
  )
}

function factsOf(plan: GreasePlan, timeZone: string): Definition[] {
  const { greaseName, entry, doseG, oil, source, reason, reviewOn, task } = plan
  const every = everyWords(plan, formatCount)
  const review = reviewOn === null ? '' : `to be looked at again on ${formatDay(reviewOn)}`
  return [
    ...(greaseName === null
      ? []
      : [{ label: 'Grease', value: greaseName, note: entry ? entryWords[entry] : undefined }]),
    ...(doseG === null ? [] : [{ label: task === 'refill' ? 'It holds' : 'Dose', value: `${doseG} g` }]),
    ...(oil === '' ? [] : [{ label: 'Oil', value: oil }]),
    ...(every === '' ? [] : [{ label: 'Interval', value: every, note: limitNote(plan) }]),
    {
      label: 'Source',
      value: source === 'computed' ? 'computed from the duty' : 'set by hand',
      note: [reason, review].filter((part) => part !== '').join('; ') || undefined,
    },
    { label: 'In force since', value: <Timestamp at={plan.createdAt} timeZone={timeZone} dateOnly /> },
  ]
}

function limitNote({ task, intervalHours, calendarMonths, calendarDays }: GreasePlan): string | undefined {
  if (task === 'refill') return 'then it is empty'
  const limits = [intervalHours, calendarMonths, calendarDays].filter((limit) => limit !== null)
  return limits.length > 1 ? 'whichever comes first; the calendar runs on while the machine stands' : undefined
}

function Review({ plan, place }: { plan: GreasePlan; place: PositionOverview }) {
  const { may } = useSite()
  const [keeping, setKeeping] = useState(false)
  if (isGunPlan(plan) && dutyOf(plan)) return <PlanProposalPart plan={plan} place={place} />
  return (
    <section className={classes.proposal} aria-label="The day of review">
      <h4 className={classes.heading}>This plan is to be looked at again</h4>
      <p>It was set by hand. Keep it with a reason, change it, or end it.</p>
      {keeping && <KeepPlan plan={plan} onDone={() => setKeeping(false)} />}
      {!keeping && may(createGreasePlan) && (
        <div className={classes.row}>
          <Button variant="default" onClick={() => setKeeping(true)}>
            Keep the plan as it is
          </Button>
        </div>
      )}
    </section>
  )
}

/** Why the plan was kept before. */
function Kept({ planId }: { planId: string }) {
  const { code, site } = useSite()
  const reviews = useQuery(reviewsQuery(code, planId))
  if (!reviews.data || reviews.data.items.length === 0) return null
  return (
    <ul className={classes.soft} aria-label="Kept as it is">
      {reviews.data.items.map(({ id, reason, decidedAt, decidedBy }) => (
        <li key={id}>
          Kept on <Timestamp at={decidedAt} timeZone={site.timeZone} dateOnly relative={false} /> by {decidedBy}:{' '}
          {reason}
        </li>
      ))}
    </ul>
  )
}
