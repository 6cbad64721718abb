import { createMakerChart, type MakerChartSummary } from '@shaftbook/contract/maker-charts'
import { useInfiniteQuery } from '@tanstack/react-query'
import type { z } from 'zod'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { PartHead } from '../../features/setup/part-head.tsx'
import { setupQueries } from '../../features/setup/setup-queries.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { DataTable } from '../../ui/data-table.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'

const columns: DataColumn<z.output<typeof MakerChartSummary>>[] = [
  { key: 'document', header: 'Document', cell: (chart) => chart.document, phone: 'title' },
  { key: 'maker', header: 'Maker', cell: (chart) => chart.maker },
  { key: 'edition', header: 'Edition', cell: (chart) => chart.edition },
  { key: 'page', header: 'Page', cell: (chart) => chart.page ?? '–' },
  { key: 'rows', header: 'Rows', cell: (chart) => chart.rowCount, align: 'right' },
]

/** The makers' reduction charts that the site has entered. */
export function ChartsPage() {
  const { code, may } = useSite()
  const charts = useInfiniteQuery(setupQueries.charts(code))
  const { rows, more } = listed(charts)
  return (
    <>
      <PartHead
        title="Makers' reduction charts"
        sentence="A position that names one of these is judged by it instead of the generic guide (R-RED)."
        act={may(createMakerChart) && { label: 'Enter a chart', href: paths.newChart(code) }}
      />
      {charts.isPending && <LoadingRows what="charts" />}
      {charts.isError && <ErrorState problem={shownProblem(charts.error)} onRetry={() => void charts.refetch()} />}
      {charts.isSuccess && (
        <DataTable
          caption="Makers' reduction charts"
          columns={columns}
          rows={rows}
          rowKey={({ id }) => id}
          rowHref={({ id }) => paths.chart(code, id)}
          more={more}
          empty={
            <EmptyState
              title="No chart is entered yet"
              text="Mounts are judged by the generic guide until then. Enter the table that the maker of your bearings gives."
            />
          }
        />
      )}
    </>
  )
}
