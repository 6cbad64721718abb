import type { MountListItem } from '@shaftbook/contract/mounts'
import { useInfiniteQuery, useQuery } from '@tanstack/react-query'
import { useSearch } from '@tanstack/react-router'
import { useMemo } from 'react'
import { UnfinishedSheets } from '../../features/mounts/unfinished-sheets.tsx'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { mountColumns } from '../../features/mounts/mount-columns.tsx'
import { MountFilterBar } from '../../features/mounts/mount-filter-bar.tsx'
import { areasQuery, mountsQuery } from '../../features/mounts/mount-queries.ts'
import { NoMounts } from '../../features/mounts/no-mounts.tsx'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { useUnits } from '../../lib/units.tsx'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { DataTable } from '../../ui/data-table.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { MountsNav } from './mounts-nav.tsx'
import type { MountsSearch } from './mounts-search.ts'

/** Every mount of the site, newest first. */
export function MountsPage() {
  const { code, site } = useSite()
  const { verdict, area, state, q }: MountsSearch = useSearch({ strict: false })
  const change = useSearchChange()
  const units = useUnits()
  const areas = useQuery(areasQuery(code))
  const mounts = useInfiniteQuery(mountsQuery(code, { verdict, areaId: area, state, search: q }))
  const { rows, more } = listed(mounts)
  const filtered = [verdict, area, state, q].some((part) => part !== undefined)
  const columns = useMemo(() => mountColumns(units, site.timeZone), [units, site.timeZone])
  return (
    <>
      <PageHead
        title="Mounts"
        sentence="Every bearing that was fitted, what was measured, and whether it finished in its band. A remount is logged from its position."
      />
      <UnfinishedSheets />
      <MountsNav active="records" />
      <MountFilterBar
        values={{ verdict, area, state, q }}
        areas={areas.data?.items ?? []}
        onChange={change}
        result={filtered && mounts.isSuccess ? matching(rows.length, more.hasMore) : undefined}
      />
      {mounts.isPending && <LoadingRows what="mount records" />}
      {mounts.isError && <ErrorState problem={shownProblem(mounts.error)} onRetry={() => void mounts.refetch()} />}
      {mounts.isSuccess && (
        <DataTable<MountListItem>
          caption="Mount records, newest first"
          columns={columns}
          rows={rows}
          rowKey={({ id }) => id}
          rowHref={({ id }) => paths.mount(code, id)}
          more={more}
          empty={
            <NoMounts
              filtered={filtered}
              onClear={() => change({ verdict: undefined, area: undefined, state: undefined, q: undefined })}
            />
          }
        />
      )}
    </>
  )
}

function matching(count: number, hasMore: boolean): string {
  if (hasMore) return `The first ${count} mounts that match`
  return count === 1 ? '1 mount matches' : `${count} mounts match`
}
