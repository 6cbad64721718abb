import { useQuery } from '@tanstack/react-query'
import { useSearch } from '@tanstack/react-router'
import { lazy, Suspense } from 'react'
import { shownProblem } from '../../api/shown-problem.ts'
import { ComplianceFilters } from '../../features/greasing-reports/compliance-filters.tsx'
import { ComplianceGroups } from '../../features/greasing-reports/compliance-groups.tsx'
import { complianceSentence, periodStart } from '../../features/greasing-reports/compliance-words.ts'
import { Overdosed } from '../../features/greasing-reports/overdosed.tsx'
import { reportQueries } from '../../features/greasing-reports/reports-queries.ts'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { useToday } from '../../lib/use-today.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { GreasingNav } from './greasing-nav.tsx'
import type { ComplianceSearch } from './reports-search.ts'

const ComplianceChart = lazy(async () => {
  const { ComplianceChart } = await import('../../features/greasing-reports/compliance-chart.tsx')
  return { default: ComplianceChart }
})

/** How the windows of a period were met, by month and by area, position or person; doses that were too large. */
export function CompliancePage() {
  const { code, site } = useSite()
  const search: ComplianceSearch = useSearch({ strict: false })
  const { months = '12', by = 'area', area, person, round, position } = search
  const change = useSearchChange()
  const today = useToday(site.timeZone)
  const areas = useQuery(reportQueries.areas(code))
  const people = useQuery(reportQueries.people(code))
  const rounds = useQuery(reportQueries.rounds(code))
  const filters = { areaId: area, personId: person, roundId: round, positionId: position }
  const question = { from: periodStart(today, months), by, ...filters }
  const compliance = useQuery(reportQueries.compliance(code, question))
  const { data } = compliance
  return (
    <>
      <PageHead
        title="Greasing compliance"
        sentence="Due windows met over windows due. A window that passes with no greasing counts as not met; an early greasing opens the next interval (R-COMPL)."
      />
      <GreasingNav active="compliance" />
      <ComplianceFilters
        values={search}
        areas={areas.data?.items ?? []}
        people={people.data?.items ?? []}
        rounds={rounds.data?.items ?? []}
        onChange={change}
      />
      {compliance.isPending && <LoadingRows what="the windows" />}
      {compliance.isError && (
        <ErrorState problem={shownProblem(compliance.error)} onRetry={() => void compliance.refetch()} />
      )}
      {data && data.months.length === 0 && (
        <EmptyState
          title={complianceSentence(data)}
          text="A window is counted once a position with a plan was greased a second time, or was overdue."
        />
      )}
      {data && data.months.length > 0 && (
        <Suspense fallback={<LoadingRows what="the chart" />}>
          <ComplianceChart compliance={data} />
        </Suspense>
      )}
      {data && data.months.length > 0 && (
        <PagePart title={`By ${by}`}>
          <ComplianceGroups compliance={data} by={by} />
        </PagePart>
      )}
      {data && (
        <PagePart title="Too much grease">
          <Overdosed compliance={data} />
        </PagePart>
      )}
    </>
  )
}
