import { Button } from '@mantine/core'
import { createGreasePlan, isGunPlan, type GunPlan } from '@shaftbook/contract/grease-plans'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { shownProblem } from '../../api/shown-problem.ts'
import { formatCount } from '../../lib/format-count.ts'
import { useSite } from '../../session/site-access.tsx'
import { DefinitionList } from '../../ui/definition-list.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { entryWords } from './entry-words.ts'
import { FactorTable } from './factor-table.tsx'
import { GreasingDialog } from './greasing-dialog.tsx'
import { placeQuery, plansQuery } from './greasing-queries.ts'
import { dutyOf } from './plan-duty.ts'
import { PlanForm } from './plan-form.tsx'
import classes from './greasing-dialog.module.css'

interface PlanDialogProps {
  positionId: string
  onClose: () => void
}

/** The grease plan of a position: what, how much, how often, and why so often. */
export function PlanDialog({ positionId, onClose }: PlanDialogProps) {
  const { code, may } = useSite()
  const place = useQuery(placeQuery(code, positionId))
  const [entering, setEntering] = useState(false)
  const title = place.data ? `Grease plan of ${place.data.position.tag}` : 'Grease plan'
  return (
    <GreasingDialog title={title} onClose={onClose} typed={entering} wide>
      {place.isPending && <LoadingRows what="the plan" rows={4} />}
      {place.isError && <ErrorState problem={shownProblem(place.error)} onRetry={() => void place.refetch()} />}
      {place.data && entering && <PlanForm place={place.data} onDone={() => setEntering(false)} />}
      {place.data && !entering && (
        <>
          {place.data.plan ? <PlanView plan={place.data.plan} place={place.data} /> : <NoPlan />}
          <div className={classes.acts}>
            <Button variant="default" onClick={onClose}>
              Close
            </Button>
            {may(createGreasePlan) && <Button onClick={() => setEntering(true)}>Enter a new plan</Button>}
          </div>
        </>
      )}
    </GreasingDialog>
  )
}

function NoPlan() {
  return (
    <EmptyState
      heading="h3"
      title="This position has no grease plan"
      text="Without a plan nobody knows when it is due. An engineer enters one."
    />
  )
}

function PlanView({ plan, place }: { plan: GunPlan; place: PositionOverview }) {
  const { site } = useSite()
  const duty = dutyOf(plan)
  return (
    <>
      <DefinitionList
        items={[
          { label: 'Where', value: `${place.machine.name}, ${place.position.name.toLowerCase()}` },
          { label: 'Grease', value: plan.greaseName, note: entryWords[plan.entry] },
          { label: 'Dose', value: `${plan.doseG} g` },
          {
            label: 'Interval',
            value: `${formatCount(plan.intervalHours)} run hours`,
            note: `or ${plan.calendarMonths} months, whichever comes first`,
          },
          {
            label: 'Source',
            value: plan.source === 'computed' ? 'computed from the duty' : 'set by hand',
            note: duty ? undefined : plan.reason,
          },
          { label: 'In force since', value: <Timestamp at={plan.createdAt} timeZone={site.timeZone} dateOnly /> },
        ]}
      />
      {duty && <FactorTable duty={duty} />}
      <EarlierPlans plan={plan} />
    </>
  )
}

function EarlierPlans({ plan }: { plan: GunPlan }) {
  const { code, site } = useSite()
  const plans = useQuery(plansQuery(code, plan.positionId))
  const earlier = plans.data?.items.filter(isGunPlan).filter(({ id }) => id !== plan.id) ?? []
  if (earlier.length === 0) return null
  return (
    <section aria-label="Plans before">
      <h3 className={classes.heading}>Plans before</h3>
      <ul>
        {earlier.map((old) => (
          <li key={old.id}>
            {old.doseG} g {old.greaseName} every {formatCount(old.intervalHours)} run hours, until{' '}
            {old.endedAt && <Timestamp at={old.endedAt} timeZone={site.timeZone} dateOnly relative={false} />}
          </li>
        ))}
      </ul>
    </section>
  )
}
