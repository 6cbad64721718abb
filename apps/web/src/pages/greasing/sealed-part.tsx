import type { GreasePlan } from '@shaftbook/contract/grease-plans'
import { useInfiniteQuery } from '@tanstack/react-query'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { sealedQuery } from '../../features/greasing/greasing-queries.ts'
import { formatDay } from '../../lib/format-day.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { DataTable } from '../../ui/data-table.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'

/** The positions that take no grease, so that none falls out of the lists. */
export function SealedPart() {
  const { code, site } = useSite()
  const sealed = useInfiniteQuery(sealedQuery(code))
  const { rows, more } = listed(sealed)
  if (sealed.isPending) return <LoadingRows what="sealed positions" />
  if (sealed.isError) return <ErrorState problem={shownProblem(sealed.error)} onRetry={() => void sealed.refetch()} />
  return (
    <DataTable<GreasePlan>
      caption="Positions that are sealed for life"
      columns={columns(site.timeZone)}
      rows={rows}
      rowKey={({ id }) => id}
      rowHref={({ positionId }) => paths.position(code, positionId)}
      more={more}
      empty={
        <EmptyState
          title="No position is sealed for life"
          text="An engineer says so in the plans of a position, with the reason."
        />
      }
    />
  )
}

function columns(timeZone: string): DataColumn<GreasePlan>[] {
  return [
    { key: 'tag', header: 'Position', cell: ({ tag }) => tag, phone: 'title' },
    { key: 'reason', header: 'How it is known', cell: ({ reason }) => reason },
    {
      key: 'since',
      header: 'Said on',
      cell: ({ createdAt }) => <Timestamp at={createdAt} timeZone={timeZone} dateOnly />,
    },
    {
      key: 'review',
      header: 'To be looked at again',
      cell: ({ reviewOn }) => (reviewOn === null ? 'never' : formatDay(reviewOn)),
    },
  ]
}
