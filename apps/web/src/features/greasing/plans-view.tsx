import { Button } from '@mantine/core'
import { createGreasePlan, type GreasePlan } from '@shaftbook/contract/grease-plans'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { formatCount } from '../../lib/format-count.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { plansQuery } from './greasing-queries.ts'
import { PlanPart } from './plan-part.tsx'
import { everyWords, planTitle } from './task-words.ts'
import { otherWays, type OtherWay } from './way-entry.ts'
import { wayWords } from './way-words.ts'
import classes from './greasing-dialog.module.css'

interface PlansViewProps {
  place: PositionOverview
  onWhatIf: () => void
  onBegin: (task: OtherWay | 'regrease') => void
  onChange: (plan: GreasePlan) => void
  onEnd: (plan: GreasePlan) => void
  onClose: () => void
}

/** All plans in force at a position, and those before. */
export function PlansView({ place, onWhatIf, onBegin, onChange, onEnd, onClose }: PlansViewProps) {
  const { may } = useSite()
  const [adding, setAdding] = useState(false)
  const { plans, machine, position } = place
  return (
    <>
      <p>
        {machine.name}, {position.name.toLowerCase()}
      </p>
      {plans.length === 0 && (
        <EmptyState
          heading="h3"
          title="This position has no plan"
          text="Without a plan nobody knows when it is due. An engineer enters one."
        />
      )}
      {plans.map((plan) => (
        <PlanPart
          key={plan.id}
          plan={plan}
          place={place}
          onWhatIf={onWhatIf}
          onChange={() => onChange(plan)}
          onEnd={() => onEnd(plan)}
        />
      ))}
      {adding && <WaysToAdd plans={plans} onBegin={onBegin} />}
      <EarlierPlans positionId={position.id} />
      <div className={classes.acts}>
        <Button variant="default" onClick={onClose}>
          Close
        </Button>
        {may(createGreasePlan) && !adding && (
          <Button onClick={() => setAdding(true)}>{plans.length === 0 ? 'Enter a plan' : 'Enter another plan'}</Button>
        )}
      </div>
    </>
  )
}

/** What the position has no plan of yet. */
function WaysToAdd({ plans, onBegin }: { plans: readonly GreasePlan[]; onBegin: PlansViewProps['onBegin'] }) {
  const has = (way: OtherWay | 'regrease'): boolean => plans.some(({ task }) => (task ?? 'sealed') === way)
  const ways = (Object.keys(otherWays) as OtherWay[]).filter((way) => !has(way))
  return (
    <section aria-label="Enter a plan of">
      <h3 className={classes.heading}>Enter a plan of</h3>
      <ul className={classes.ways}>
        {!has('regrease') && (
          <Way
            title="Regreasing by gun"
            hint="The interval from speed, size, load and surroundings."
            onPick={() => onBegin('regrease')}
          />
        )}
        {ways.map((way) => (
          <Way key={way} {...wayWords[way]} onPick={() => onBegin(way)} />
        ))}
      </ul>
    </section>
  )
}

function Way({ title, hint, onPick }: { title: string; hint: string; onPick: () => void }) {
  return (
    <li>
      <button type="button" className={classes.way} onClick={onPick}>
        <strong>{title}</strong>
        <span className={classes.soft}>{hint}</span>
      </button>
    </li>
  )
}

function EarlierPlans({ positionId }: { positionId: string }) {
  const { code, site } = useSite()
  const plans = useQuery(plansQuery(code, positionId))
  const earlier = plans.data?.items.filter(({ endedAt }) => endedAt !== null) ?? []
  if (earlier.length === 0) return null
  return (
    <section aria-label="Plans before">
      <h3 className={classes.heading}>Plans before</h3>
      <ul>
        {earlier.map((old) => (
          <li key={old.id}>
            {wordsOf(old)}, until{' '}
            {old.endedAt && <Timestamp at={old.endedAt} timeZone={site.timeZone} dateOnly relative={false} />}
            {old.endedReason && `: ${old.endedReason}`}
          </li>
        ))}
      </ul>
    </section>
  )
}

/** "Regrease by gun: 42 g of Skerry WR 2, every 2 000 run hours or 12 months". */
function wordsOf(plan: GreasePlan): string {
  const amount = plan.doseG === null ? plan.oil : `${plan.doseG} g of ${plan.greaseName}`
  const words = [amount, everyWords(plan, formatCount).toLowerCase()].filter((part) => part !== '').join(', ')
  return words === '' ? planTitle(plan) : `${planTitle(plan)}: ${words}`
}
