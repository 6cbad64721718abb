import { Button } from '@mantine/core'
import type { PositionListItem } from '@shaftbook/contract/position-views'
import { useInfiniteQuery } from '@tanstack/react-query'
import { useMemo } from 'react'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { boardColumns } from '../../features/positions/board-columns.tsx'
import { positionQueries } from '../../features/positions/position-queries.ts'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import type { TableSort } from '../../ui/data-table-types.ts'
import { DataTable } from '../../ui/data-table.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import type { PositionsSearch } from './positions-search.ts'

/** The positions as a table, narrowed and sorted as the address says. */
export function PositionsTable({ search }: { search: PositionsSearch }) {
  const { code, site } = useSite()
  const { q, area, machine, verdict, due, sort = 'tag' } = search
  const change = useSearchChange()
  const board = useInfiniteQuery(
    positionQueries.board(code, { search: q, areaId: area, machineId: machine, verdict, dueState: due, sort }),
  )
  const { rows, more } = listed(board)
  const columns = useMemo(() => boardColumns(site.timeZone), [site.timeZone])
  const narrowed = [q, area, machine, verdict, due].some((part) => part !== undefined)
  const sorted: TableSort = { key: sort.replace('-', ''), descending: sort.startsWith('-') }
  const clear = () => change({ q: undefined, area: undefined, machine: undefined, verdict: undefined, due: undefined })
  if (board.isPending) return <LoadingRows what="positions" />
  if (board.isError) return <ErrorState problem={shownProblem(board.error)} onRetry={() => void board.refetch()} />
  return (
    <DataTable<PositionListItem>
      caption="Positions"
      columns={columns}
      rows={rows}
      rowKey={({ id }) => id}
      rowHref={({ id }) => paths.position(code, id)}
      sort={sorted}
      onSort={(next) => change({ sort: next && `${next.descending ? '-' : ''}${next.key}` })}
      more={more}
      empty={narrowed ? <NothingFound onClear={clear} /> : <NoPositions />}
    />
  )
}

function NothingFound({ onClear }: { onClear: () => void }) {
  return (
    <EmptyState
      title="No position matches"
      text="The search looks at tags, names, machines, bearings with their serial, and the parts of kits."
      action={
        <Button variant="default" onClick={onClear}>
          Show all positions
        </Button>
      }
    />
  )
}

export function NoPositions() {
  return (
    <EmptyState
      title="No position is registered yet"
      text="An engineer enters areas, machines, shafts and positions in the setup."
    />
  )
}
