import { changeMakerChart, createMakerChart } from '@shaftbook/contract/maker-charts'
import { Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useParams, useSearch } from '@tanstack/react-router'
import { shownProblem } from '../../api/shown-problem.ts'
import { ChartForm } from '../../features/setup/chart-form.tsx'
import { ChartTakeover } from '../../features/setup/chart-takeover.tsx'
import { ChartView, CopyRows } from '../../features/setup/chart-view.tsx'
import { PartHead } from '../../features/setup/part-head.tsx'
import { setupQueries } from '../../features/setup/setup-queries.ts'
import { setupTrail } from '../../features/setup/setup-trail.ts'
import classes from '../../features/setup/setup.module.css'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { PagePart } from '../../ui/page-part.tsx'

/** One chart to read. */
export function ChartPage() {
  const { code, may } = useSite()
  const chart = useChart()
  if (chart.isPending) return <LoadingRows what="the chart" />
  if (chart.isError)
    return <ErrorState heading="h1" problem={shownProblem(chart.error)} onRetry={() => void chart.refetch()} />
  const { id, document, maker, edition, page, rows, used, positionCount, replacesId } = chart.data
  const change = { label: used ? 'Mend the page' : 'Change the chart', href: paths.changeChart(code, id) }
  const next = { label: 'New edition of this chart', href: paths.nextChart(code, id) }
  const [first, second] = used ? [next, change] : [change, next]
  return (
    <>
      <PartHead
        title={document}
        sentence={`${maker}, edition ${edition}${page ? `, page ${page}` : ''}. The maker's own manual comes first.`}
        trail={chartsTrail(code)}
        act={may(changeMakerChart) && first}
        besides={
          may(changeMakerChart) && (
            <Button component={AppLink} href={second.href} variant="default">
              {second.label}
            </Button>
          )
        }
      />
      <p className={classes.sentence}>{standing(positionCount, used)}</p>
      {replacesId !== null && <ChartTakeover chart={chart.data} />}
      <PagePart title="Rows" aside={<CopyRows rows={rows} />}>
        <ChartView rows={rows} />
      </PagePart>
    </>
  )
}

/** What a chart is used for at present, and what that means for changing it. */
function standing(positionCount: number, used: boolean): string {
  const positions = positionCount === 1 ? '1 position goes' : `${positionCount || 'No'} positions go`
  const stays = used ? ' Signed mount records went by it, so its rows stay: enter what changed as a new edition.' : ''
  return `${positions} by this chart.${stays}`
}

/** Enters a chart, or the next edition of one. */
export function NewChartPage() {
  const { code, may } = useSite()
  const { from }: { from?: string } = useSearch({ strict: false })
  const before = useQuery({ ...setupQueries.chart(code, from ?? ''), enabled: from !== undefined })
  if (!may(createMakerChart)) return <NotYours />
  if (from !== undefined) {
    if (before.isPending) return <LoadingRows what="the chart" />
    if (before.isError)
      return <ErrorState heading="h1" problem={shownProblem(before.error)} onRetry={() => void before.refetch()} />
    return (
      <>
        <PartHead
          title={`New edition of ${before.data.document}`}
          sentence={`Begins with the rows of edition ${before.data.edition}, which stays as it is. Positions are moved to the new edition afterwards, all at once.`}
          trail={chartsTrail(code)}
        />
        <ChartForm key={before.data.id} before={before.data} />
      </>
    )
  }
  return (
    <>
      <PartHead
        title="Enter a maker's chart"
        sentence="Type it from the maker's own document or paste its table, and let a second person compare it."
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
        sentence={
          chart.data.used
            ? 'Signed mount records went by it: maker, document, edition and rows stay. What changed is entered as a new edition.'
            : 'No signed mount record went by it yet, so all of it can be changed.'
        }
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
