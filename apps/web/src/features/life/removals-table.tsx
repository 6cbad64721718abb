import type { RemovalListItem } from '@shaftbook/contract/removals'
import { useInfiniteQuery } from '@tanstack/react-query'
import type { z } from 'zod'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { formatCount } from '../../lib/format-count.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { DataTable } from '../../ui/data-table.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { lifeQueries, type RemovalFilter } from './life-queries.ts'
import { endKindWords, modeWords } from './life-words.ts'

type Item = z.output<typeof RemovalListItem>

/** Removals that count, newest first. */
export function RemovalsTable({ filter }: { filter: RemovalFilter }) {
  const { code, site } = useSite()
  const removals = useInfiniteQuery(lifeQueries.removals(code, filter))
  if (removals.isPending) return <LoadingRows what="removals" />
  if (removals.isError)
    return <ErrorState problem={shownProblem(removals.error)} onRetry={() => void removals.refetch()} />
  const { rows, more } = listed(removals)
  const filtered = filter.endKind !== undefined || filter.modeClause !== undefined
  return (
    <DataTable
      caption="Removals, newest first"
      columns={removalColumns(site.timeZone)}
      rows={rows}
      rowKey={({ id }) => id}
      rowHref={({ positionId }) => paths.position(code, positionId)}
      more={more}
      empty={
        filtered ? (
          <EmptyState heading="h3" title="No removal matches" text="Look at all endings, or at another failure mode." />
        ) : (
          <EmptyState
            heading="h3"
            title="No bearing has been removed yet"
            text="A removal is logged at its position, or with the remount that follows it."
          />
        )
      }
    />
  )
}

function removalColumns(timeZone: string): DataColumn<Item>[] {
  return [
    { key: 'tag', header: 'Position', cell: (item) => item.tag, phone: 'title' },
    {
      key: 'at',
      header: 'Removed',
      cell: (item) => <Timestamp at={item.removedAt} timeZone={timeZone} dateOnly relative={false} />,
      phone: 'aside',
    },
    { key: 'machine', header: 'Machine', cell: (item) => item.machineName },
    { key: 'bearing', header: 'Bearing', cell: (item) => item.designation },
    { key: 'end', header: 'Ending', cell: (item) => endKindWords[item.endKind] },
    { key: 'mode', header: 'Mode and cause', cell: whyOf },
    { key: 'life', header: 'Life', unit: 'h', cell: lifeOf, align: 'right' },
  ]
}

function whyOf(item: Item): string {
  const mode = item.endKind === 'failed' ? modeWords(item) : null
  return [mode, item.cause].filter(Boolean).join('; ') || '–'
}

function lifeOf({ lifeHours, hoursSource }: Item): string {
  if (lifeHours === null) return 'not known'
  return hoursSource === 'estimate' ? `${formatCount(lifeHours)} estimated` : formatCount(lifeHours)
}
