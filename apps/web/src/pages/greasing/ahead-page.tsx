import { NativeSelect } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useSearch } from '@tanstack/react-router'
import { lazy, Suspense } from 'react'
import { shownProblem } from '../../api/shown-problem.ts'
import { forecastPeriods, weeksOf } from '../../features/greasing-reports/forecast-words.ts'
import { reportQueries } from '../../features/greasing-reports/reports-queries.ts'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { FilterBar } from '../../ui/filter-bar.tsx'
import { AppLink } from '../../ui/link.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { GreasingNav } from './greasing-nav.tsx'
import type { AheadSearch } from './reports-search.ts'

const ForecastCharts = lazy(async () => {
  const { ForecastCharts } = await import('../../features/greasing-reports/forecast-charts.tsx')
  return { default: ForecastCharts }
})

/** The greasing of the coming weeks as work and as grease. */
export function AheadPage() {
  const { code } = useSite()
  const { weeks, area }: AheadSearch = useSearch({ strict: false })
  const change = useSearchChange()
  const areas = useQuery(reportQueries.areas(code))
  const forecast = useQuery(reportQueries.forecast(code, weeksOf(weeks), area))
  const known = areas.data?.items ?? []
  const clear = (): void => change({ area: undefined })
  const areaName = known.find(({ id }) => id === area)?.name ?? 'not known'
  return (
    <>
      <PageHead
        title="Greasing ahead"
        sentence="What the coming weeks ask for, if each task is done on its day and the machines run as they did."
      />
      <GreasingNav active="ahead" />
      <FilterBar active={area ? [{ key: 'area', label: `Area: ${areaName}`, onRemove: clear }] : []} onClear={clear}>
        <NativeSelect
          label="Weeks"
          value={weeks ?? '8'}
          onChange={(event) => change({ weeks: event.currentTarget.value })}
          data={forecastPeriods.map((value) => ({ value, label: `${value} weeks` }))}
        />
        <NativeSelect
          label="Area"
          value={area ?? ''}
          onChange={(event) => change({ area: event.currentTarget.value || undefined })}
          data={[{ value: '', label: 'All areas' }, ...known.map(({ id, name }) => ({ value: id, label: name }))]}
        />
      </FilterBar>
      {forecast.isPending && <LoadingRows what="the coming weeks" />}
      {forecast.isError && (
        <ErrorState problem={shownProblem(forecast.error)} onRetry={() => void forecast.refetch()} />
      )}
      {forecast.data && forecast.data.tasks.length === 0 && (
        <EmptyState
          title={`Nothing is due in the next ${forecast.data.weeks.length} weeks`}
          text="Work is counted here once a position has a plan and carries a bearing."
          action={<AppLink href={paths.greasing(code)}>What is due later</AppLink>}
        />
      )}
      {forecast.data && forecast.data.tasks.length > 0 && (
        <Suspense fallback={<LoadingRows what="the charts" />}>
          <ForecastCharts forecast={forecast.data} />
        </Suspense>
      )}
    </>
  )
}
