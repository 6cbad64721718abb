import { changeMakerChart, createMakerChart } from '@shaftbook/contract/maker-charts'
import { useQuery } from '@tanstack/react-query'
import { useParams } from '@tanstack/react-router'
import { shownProblem } from '../../api/shown-problem.ts'
import { ChartForm } from '../../features/setup/chart-form.tsx'
import { ChartView } from '../../features/setup/chart-view.tsx'
import { PartHead } from '../../features/setup/part-head.tsx'
import { setupQueries } from '../../features/setup/setup-queries.ts'
import { setupTrail } from '../../features/setup/setup-trail.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'

/** One chart to read. */
export function ChartPage() {
  const { code, may } = useSite()
  const chart = useChart()
  if (chart.isPending) return <LoadingRows what="the chart" />
  if (chart.isError)
    return <ErrorState heading="h1" problem={shownProblem(chart.error)} onRetry={() => void chart.refetch()} />
  const { id, document, maker, edition, page, rows } = chart.data
  return (
    <>
      <PartHead
        title={document}
        sentence={`${maker}, edition ${edition}${page ? `, page ${page}` : ''}. The maker's own manual comes first.`}
        trail={chartsTrail(code)}
        act={may(changeMakerChart) && { label: 'Change the chart', href: paths.changeChart(code, id) }}
      />
      <ChartView rows={rows} />
    </>
  )
}

/** Enters a chart. */
export function NewChartPage() {
  const { code, may } = useSite()
  if (!may(createMakerChart)) return <NotYours />
  return (
    <>
      <PartHead
        title="Enter a maker's chart"
        sentence="Type it from the maker's own document, row by row, and let a second person compare it."
        trail={chartsTrail(code)}
      />
      <ChartForm />
    </>
  )
}

/** Changes a chart. */
export function ChangeChartPage() {
  const { code, may } = useSite()
  const chart = useChart()
  if (!may(changeMakerChart)) return <NotYours />
  if (chart.isPending) return <LoadingRows what="the chart" />
  if (chart.isError)
    return <ErrorState heading="h1" problem={shownProblem(chart.error)} onRetry={() => void chart.refetch()} />
  return (
    <>
      <PartHead
        title="Change a maker's chart"
        sentence="Mount records that were judged by it keep their verdicts."
        trail={chartsTrail(code)}
      />
      <ChartForm key={chart.data.version} chart={chart.data} />
    </>
  )
}

function useChart() {
  const { code } = useSite()
  const { id = '' }: { id?: string } = useParams({ strict: false })
  return useQuery(setupQueries.chart(code, id))
}

function chartsTrail(site: string) {
  return setupTrail(site, { label: "Makers' charts", href: paths.setupPart(site, 'charts') })
}

function NotYours() {
  return (
    <EmptyState
      heading="h1"
      title="Your role does not enter or change charts"
      text="An engineer or a manager of the site does."
    />
  )
}
