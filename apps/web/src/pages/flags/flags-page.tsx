import type { Flag } from '@shaftbook/contract/flags'
import { useInfiniteQuery, useQuery } from '@tanstack/react-query'
import { useSearch } from '@tanstack/react-router'
import { useState } from 'react'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { flagCountsSentence } from '../../features/flags/flag-counts-sentence.ts'
import { FlagFilters } from '../../features/flags/flag-filters.tsx'
import { FlagItem } from '../../features/flags/flag-item.tsx'
import { flagQueries } from '../../features/flags/flag-queries.ts'
import { NoFlags } from '../../features/flags/no-flags.tsx'
import { PutOffDialog } from '../../features/flags/put-off-dialog.tsx'
import { PlannedNext } from '../../features/mount-plans/planned-here.tsx'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { TableFoot } from '../../ui/data-table-foot.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { FlagList } from '../../ui/flag-row.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { SectionNav } from '../../ui/section-nav.tsx'
import type { FlagsSearch } from './flags-search.ts'

/** What needs someone at the site, most pressing first. */
export function FlagsPage() {
  const { code } = useSite()
  const { state = 'open', kind, area, q }: FlagsSearch = useSearch({ strict: false })
  const change = useSearchChange()
  const [puttingOff, setPuttingOff] = useState<Flag | null>(null)
  const counts = useQuery(flagQueries.counts(code))
  const areas = useQuery(flagQueries.areas(code))
  const flags = useInfiniteQuery(flagQueries.list(code, { state, kind, areaId: area, search: q }))
  const { rows, more } = listed(flags)
  const filtered = kind !== undefined || area !== undefined || q !== undefined
  const stateHref = (to: string) => `${paths.flags(code)}${to === 'open' ? '' : `?state=${to}`}`

  return (
    <>
      <PageHead title="Flags" sentence={counts.data && flagCountsSentence(counts.data)} />
      <PlannedNext />
      <SectionNav
        label="Flags by state"
        active={state}
        places={[
          { key: 'open', label: 'Open', href: stateHref('open'), count: counts.data?.open },
          { key: 'put-off', label: 'Put off', href: stateHref('put-off'), count: counts.data?.putOff },
          { key: 'cleared', label: 'Cleared', href: stateHref('cleared') },
        ]}
      />
      <FlagFilters
        values={{ kind, area, q }}
        onChange={change}
        areas={areas.data?.items ?? []}
        counts={state === 'open' ? counts.data : undefined}
        result={filtered && flags.isSuccess ? matching(rows.length, more.hasMore) : undefined}
      />
      {flags.isPending && <LoadingRows what="flags" />}
      {flags.isError && <ErrorState problem={shownProblem(flags.error)} onRetry={() => void flags.refetch()} />}
      {flags.isSuccess && rows.length === 0 && (
        <NoFlags
          state={state}
          filtered={filtered}
          onClear={() => change({ kind: undefined, area: undefined, q: undefined })}
        />
      )}
      {rows.length > 0 && (
        <>
          <FlagList label={state === 'cleared' ? 'Flags, last cleared first' : 'Flags, most pressing first'}>
            {rows.map((flag) => (
              <FlagItem key={flag.id} flag={flag} onPutOff={setPuttingOff} />
            ))}
          </FlagList>
          <TableFoot more={more} shown={rows.length} />
        </>
      )}
      {puttingOff && <PutOffDialog flag={puttingOff} onClose={() => setPuttingOff(null)} />}
    </>
  )
}

function matching(count: number, hasMore: boolean): string {
  if (hasMore) return `The first ${count} flags that match`
  return count === 1 ? '1 flag matches' : `${count} flags match`
}
