import { Button } from '@mantine/core'
import { useInfiniteQuery, useQuery } from '@tanstack/react-query'
import { useSearch } from '@tanstack/react-router'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { DueFilterBar } from '../../features/greasing/due-filter-bar.tsx'
import { DueList } from '../../features/greasing/due-list.tsx'
import { areasQuery, dueQuery } from '../../features/greasing/greasing-queries.ts'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { useSite } from '../../session/site-access.tsx'
import { TableFoot } from '../../ui/data-table-foot.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import type { GreasingSearch } from './greasing-search.ts'

/** The due list. */
export function DuePart() {
  const { code } = useSite()
  const { area, task, state, q }: GreasingSearch = useSearch({ strict: false })
  const change = useSearchChange()
  const areas = useQuery(areasQuery(code))
  const due = useInfiniteQuery(dueQuery(code, { areaId: area, task, state, search: q }))
  const { rows, more } = listed(due)
  const filtered = [area, task, state, q].some((part) => part !== undefined)
  const clear = (): void => change({ area: undefined, task: undefined, state: undefined, q: undefined })
  return (
    <>
      <DueFilterBar
        values={{ area, task, state, q }}
        areas={areas.data?.items ?? []}
        onChange={change}
        result={filtered && due.isSuccess ? matching(rows.length, more.hasMore) : undefined}
      />
      {due.isPending && <LoadingRows what="due positions" />}
      {due.isError && <ErrorState problem={shownProblem(due.error)} onRetry={() => void due.refetch()} />}
      {due.isSuccess && rows.length === 0 && <NothingDue filtered={filtered} onClear={clear} />}
      {rows.length > 0 && (
        <>
          <DueList items={rows} onLog={(log, done) => change({ log, do: done })} onPlan={(plan) => change({ plan })} />
          <TableFoot more={more} shown={rows.length} />
        </>
      )}
    </>
  )
}

function NothingDue({ filtered, onClear }: { filtered: boolean; onClear: () => void }) {
  if (!filtered)
    return (
      <EmptyState
        title="No position has a plan yet"
        text="A position is listed here once an engineer has given it a plan."
      />
    )
  return (
    <EmptyState
      title="Nothing matches"
      text="Take a filter away, or search by tag or machine."
      action={
        <Button variant="default" onClick={onClear}>
          Clear all filters
        </Button>
      }
    />
  )
}

function matching(count: number, hasMore: boolean): string {
  if (hasMore) return `The first ${count} that match`
  return count === 1 ? '1 task matches' : `${count} tasks match`
}
