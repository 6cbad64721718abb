import { useInfiniteQuery } from '@tanstack/react-query'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { PlanList } from '../../features/mount-plans/plan-list.tsx'
import { planQueries } from '../../features/mount-plans/plan-queries.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { TableFoot } from '../../ui/data-table-foot.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { MountsNav } from './mounts-nav.tsx'

/** The mounts that are planned, by day. */
export function PlannedMountsPage() {
  const { code } = useSite()
  const plans = useInfiniteQuery(planQueries.list(code, { state: 'open' }))
  const { rows, more } = listed(plans)
  return (
    <>
      <PageHead
        title="Planned mounts"
        sentence="What an engineer has planned, by day. A mount is planned from its position; the signed sheet takes it off this list."
      />
      <MountsNav active="planned" />
      {plans.isPending && <LoadingRows what="planned mounts" />}
      {plans.isError && <ErrorState problem={shownProblem(plans.error)} onRetry={() => void plans.refetch()} />}
      {plans.isSuccess && rows.length === 0 && (
        <EmptyState
          title="No mount is planned"
          text="An engineer or a manager plans one from its position. A mount can be logged without a plan too."
          action={<AppLink href={paths.positions(code)}>Positions</AppLink>}
        />
      )}
      {rows.length > 0 && (
        <>
          <PlanList plans={rows} />
          <TableFoot more={more} shown={rows.length} />
        </>
      )}
    </>
  )
}
