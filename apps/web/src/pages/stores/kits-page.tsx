import { Button } from '@mantine/core'
import { createKit } from '@shaftbook/contract/kits'
import { useInfiniteQuery } from '@tanstack/react-query'
import { useSearch } from '@tanstack/react-router'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { kitColumns } from '../../features/stores/part-columns.tsx'
import { storesQueries, type KitItem } from '../../features/stores/stores-queries.ts'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { DataTable } from '../../ui/data-table.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { FilterBar } from '../../ui/filter-bar.tsx'
import { AppLink } from '../../ui/link.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { SearchField } from '../../ui/search-field.tsx'
import { StoresNav } from './stores-nav.tsx'
import type { FindSearch } from './stores-search.ts'

/** Every kit: all that goes on with a bearing at positions of one kind. */
export function KitsPage() {
  const { code, may } = useSite()
  const { q }: FindSearch = useSearch({ strict: false })
  const change = useSearchChange()
  const list = useInfiniteQuery(storesQueries.kits(code, q))
  const { rows, more } = listed(list)
  return (
    <>
      <PageHead
        title="Kits"
        sentence="Everything that goes on with a bearing; positions that are alike share a kit."
        actions={
          may(createKit) && (
            <Button component={AppLink} href={paths.newKit(code)}>
              Enter a kit
            </Button>
          )
        }
      />
      <StoresNav active="kits" />
      <FilterBar
        search={
          <SearchField
            placeholder="Name, or a part in it"
            value={q ?? ''}
            slash
            onSearch={(text) => change({ q: text || undefined })}
          />
        }
        active={q ? [{ key: 'q', label: `Search: ${q}`, onRemove: () => change({ q: undefined }) }] : []}
        onClear={() => change({ q: undefined })}
      />
      {list.isPending && <LoadingRows what="kits" />}
      {list.isError && <ErrorState problem={shownProblem(list.error)} onRetry={() => void list.refetch()} />}
      {list.isSuccess && (
        <DataTable<KitItem>
          caption="Kits by name"
          columns={kitColumns}
          rows={rows}
          rowKey={({ id }) => id}
          rowHref={({ id }) => paths.kit(code, id)}
          more={more}
          empty={
            <EmptyState
              title={q ? 'No kit matches' : 'No kit is entered yet'}
              text={q ? 'Try the code of a part that is in it.' : 'Stores enter kits; positions are then given theirs.'}
            />
          }
        />
      )}
    </>
  )
}
