import { Button, NativeSelect } from '@mantine/core'
import { correctGreasing, WindowResult, type Greasing } from '@shaftbook/contract/greasing'
import { useInfiniteQuery } from '@tanstack/react-query'
import { useSearch } from '@tanstack/react-router'
import { useMemo, useState } from 'react'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { CorrectDialog } from '../../features/greasing/correct-dialog.tsx'
import { doneColumns } from '../../features/greasing/done-columns.tsx'
import { greasingsQuery } from '../../features/greasing/greasing-queries.ts'
import { windowWord } from '../../features/greasing/window-mark.tsx'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { useSite } from '../../session/site-access.tsx'
import { DataTable } from '../../ui/data-table.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { FilterBar } from '../../ui/filter-bar.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import type { GreasingSearch } from './greasing-search.ts'

/** What was greased, newest first. */
export function DonePart() {
  const { code, site, may } = useSite()
  const { window }: GreasingSearch = useSearch({ strict: false })
  const change = useSearchChange()
  const [correcting, setCorrecting] = useState<Greasing | null>(null)
  const greasings = useInfiniteQuery(greasingsQuery(code, window))
  const { rows, more } = listed(greasings)
  const mayCorrect = may(correctGreasing)
  const columns = useMemo(
    () => doneColumns({ site: code, timeZone: site.timeZone, onCorrect: mayCorrect ? setCorrecting : undefined }),
    [code, site.timeZone, mayCorrect],
  )
  const clear = (): void => change({ window: undefined })
  return (
    <>
      <FilterBar
        active={window ? [{ key: 'w', label: `Window: ${windowWord(window).toLowerCase()}`, onRemove: clear }] : []}
        onClear={clear}
      >
        <NativeSelect
          label="Window"
          value={window ?? ''}
          onChange={(event) => change({ window: event.currentTarget.value || undefined })}
          data={[
            { value: '', label: 'All results' },
            ...WindowResult.options.map((value) => ({ value, label: windowWord(value) })),
          ]}
        />
      </FilterBar>
      {greasings.isPending && <LoadingRows what="greasings" />}
      {greasings.isError && (
        <ErrorState problem={shownProblem(greasings.error)} onRetry={() => void greasings.refetch()} />
      )}
      {greasings.isSuccess && (
        <DataTable<Greasing>
          caption="Greasings, newest first"
          columns={columns}
          rows={rows}
          rowKey={({ id }) => id}
          more={more}
          empty={<NothingDone filtered={window !== undefined} onClear={clear} />}
        />
      )}
      {correcting && <CorrectDialog greasing={correcting} onClose={() => setCorrecting(null)} />}
    </>
  )
}

function NothingDone({ filtered, onClear }: { filtered: boolean; onClear: () => void }) {
  if (!filtered) return <EmptyState title="Nothing is greased yet" text="Log a greasing from the due list." />
  return (
    <EmptyState
      title="No greasing with this result"
      action={
        <Button variant="default" onClick={onClear}>
          Show all results
        </Button>
      }
    />
  )
}
