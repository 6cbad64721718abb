import { Button } from '@mantine/core'
import type { MountPlan } from '@shaftbook/contract/mount-plans'
import { createMount } from '@shaftbook/contract/mounts'
import { formatDay } from '../../lib/format-day.ts'
import { useToday } from '../../lib/use-today.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { byDay, dayWords } from './plan-entry.ts'
import classes from './plans.module.css'

/** Open planned mounts by day, each with what to take along and the way to its sheet. */
export function PlanList({ plans }: { plans: readonly MountPlan[] }) {
  const { site } = useSite()
  const today = useToday(site.timeZone)
  return (
    <div className={classes.days}>
      {byDay(plans).map(({ day, plans: ofDay }) => {
        const words = dayWords(day, today)
        return (
          <section key={day} aria-label={formatDay(day)}>
            <h2 className={classes.day}>
              {formatDay(day)}
              {words && (
                <span className={classes.when} data-passed={words === 'passed' || undefined}>
                  {words}
                </span>
              )}
            </h2>
            <ul className={classes.list}>
              {ofDay.map((plan) => (
                <PlanItem key={plan.id} plan={plan} />
              ))}
            </ul>
          </section>
        )
      })}
    </div>
  )
}

function PlanItem({ plan }: { plan: MountPlan }) {
  const { code, may } = useSite()
  const { tag, machineName, areaName, designation, kitName, who, reason } = plan
  return (
    <li className={classes.item}>
      <div>
        <p>
          <AppLink href={paths.plannedMount(code, plan.id)} className={classes.tag}>
            {tag}
          </AppLink>{' '}
          {designation}
        </p>
        <p>{reason}</p>
        <p className={classes.soft}>
          {[`${machineName}, ${areaName}`, kitName ? `kit ${kitName}` : 'no kit named', who]
            .filter(Boolean)
            .join(' · ')}
        </p>
      </div>
      {may(createMount) ? <StartPlan plan={plan} /> : <GetKit plan={plan} />}
    </li>
  )
}

/** For whoever gets the parts ready. */
function GetKit({ plan }: { plan: MountPlan }) {
  const { code } = useSite()
  return (
    <div>
      <Button
        component={AppLink}
        variant="default"
        href={paths.pickList(code, plan.positionId)}
        aria-label={`Pick list for ${plan.tag}`}
      >
        Pick list
      </Button>
    </div>
  )
}

/** Opens the mount sheet with a plan. */
export function StartPlan({ plan }: { plan: MountPlan }) {
  const { code } = useSite()
  return (
    <div>
      <Button
        component={AppLink}
        href={paths.startPlan(code, plan.positionId, plan.id)}
        aria-label={`Start the mount at ${plan.tag}`}
      >
        Start
      </Button>
    </div>
  )
}
