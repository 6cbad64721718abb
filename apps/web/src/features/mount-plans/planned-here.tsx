import { createMount } from '@shaftbook/contract/mounts'
import { useInfiniteQuery } from '@tanstack/react-query'
import { listed } from '../../api/listed.ts'
import { formatDay } from '../../lib/format-day.ts'
import { useToday } from '../../lib/use-today.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { dayWords } from './plan-entry.ts'
import { StartPlan } from './plan-list.tsx'
import { planQueries } from './plan-queries.ts'
import classes from './plans.module.css'

/** The open plans of one position; nothing where none is planned. */
export function PlannedHere({ positionId }: { positionId: string }) {
  const { code, site, may } = useSite()
  const today = useToday(site.timeZone)
  const { rows } = listed(useInfiniteQuery(planQueries.list(code, { positionId, state: 'open' })))
  if (rows.length === 0) return null
  return (
    <PagePart title="Planned here">
      <ul className={classes.list}>
        {rows.map((plan) => (
          <li key={plan.id} className={classes.item}>
            <div>
              <p>
                <AppLink href={paths.plannedMount(code, plan.id)} className={classes.tag}>
                  Mount on {formatDay(plan.plannedFor)}
                </AppLink>{' '}
                {plan.designation} {dayWords(plan.plannedFor, today)}
              </p>
              <p className={classes.soft}>{[plan.reason, plan.who].filter(Boolean).join(' · ')}</p>
            </div>
            {may(createMount) && <StartPlan plan={plan} />}
          </li>
        ))}
      </ul>
    </PagePart>
  )
}

/** Says to whom mounts how many are planned, and when the next one is; nothing where none is. */
export function PlannedNext() {
  const { code, site } = useSite()
  const today = useToday(site.timeZone)
  const { rows, more } = listed(useInfiniteQuery(planQueries.list(code, { state: 'open' })))
  const [next] = rows
  if (!next) return null
  const count =
    rows.length === 1 ? '1 mount is planned' : `${rows.length}${more.hasMore ? ' and more' : ''} mounts are planned`
  const day = dayWords(next.plannedFor, today) || `on ${formatDay(next.plannedFor)}`
  const when = day === 'passed' ? `the first was for ${formatDay(next.plannedFor)}` : `the next ${day}`
  return (
    <p className={classes.next}>
      <AppLink href={paths.plannedMounts(code)}>
        {count}, {when}
      </AppLink>
    </p>
  )
}
