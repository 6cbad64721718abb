import { useQuery } from '@tanstack/react-query'
import { useSearch } from '@tanstack/react-router'
import { lazy, Suspense } from 'react'
import { shownProblem } from '../../api/shown-problem.ts'
import { lifeFacts } from '../../features/life/life-facts.ts'
import { lifeQueries } from '../../features/life/life-queries.ts'
import { lifeSentence } from '../../features/life/life-words.ts'
import { RemovalFilters } from '../../features/life/removal-filters.tsx'
import { RemovalsTable } from '../../features/life/removals-table.tsx'
import { WorstPositions } from '../../features/life/worst-positions.tsx'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { useSite } from '../../session/site-access.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import classes from './life-page.module.css'
import type { LifeSearch } from './life-search.ts'

const ModesChart = lazy(async () => {
  const { ModesChart } = await import('../../features/life/modes-chart.tsx')
  return { default: ModesChart }
})

/** How bearings of the site ended: totals, modes, positions that failed most, and every removal. */
export function LifePage() {
  const { code } = useSite()
  const { end, mode }: LifeSearch = useSearch({ strict: false })
  const change = useSearchChange()
  const summary = useQuery(lifeQueries.summary(code))
  return (
    <>
      <PageHead
        title="Life"
        sentence={summary.data && lifeSentence(summary.data)}
        facts={summary.data && lifeFacts(summary.data)}
      />
      {summary.isPending && <LoadingRows what="the totals" />}
      {summary.isError && <ErrorState problem={shownProblem(summary.error)} onRetry={() => void summary.refetch()} />}
      {summary.data && summary.data.failures > 0 && (
        <div className={classes.two}>
          <Suspense fallback={<LoadingRows what="the chart" />}>
            <ModesChart summary={summary.data} />
          </Suspense>
          <section aria-labelledby="life-worst">
            <h2 id="life-worst" className={classes.title}>
              Positions that failed most
            </h2>
            <p className={classes.sentence}>
              Counts only, from two failures up. Rates and survival curves come when there is more to draw them from.
            </p>
            <WorstPositions worst={summary.data.worst} />
          </section>
        </div>
      )}
      <section aria-labelledby="life-removals">
        <h2 id="life-removals" className={classes.title}>
          Removals
        </h2>
        <RemovalFilters end={end} mode={mode} modes={summary.data?.byMode ?? []} onChange={change} />
        <RemovalsTable filter={{ endKind: end, modeClause: mode }} />
      </section>
    </>
  )
}
