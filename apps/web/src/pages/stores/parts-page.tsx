import { Button, NativeSelect } from '@mantine/core'
import { PartKind, parts as partsTable } from '@shaftbook/contract/register-tables'
import { useInfiniteQuery } from '@tanstack/react-query'
import { useSearch } from '@tanstack/react-router'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { partColumns } from '../../features/stores/part-columns.tsx'
import { partKindWords } from '../../features/stores/part-kinds.ts'
import { storesQueries, type Part } from '../../features/stores/stores-queries.ts'
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
import type { PartsSearch } from './stores-search.ts'

/** Every part that the store keeps for shaft positions. */
export function PartsPage() {
  const { code, may } = useSite()
  const { q, kind, sort = 'number' }: PartsSearch = useSearch({ strict: false })
  const change = useSearchChange()
  const list = useInfiniteQuery(storesQueries.parts(code, { search: q, kind, sort }))
  const { rows, more } = listed(list)
  const clear = () => change({ q: undefined, kind: undefined })
  return (
    <>
      <PageHead
        title="Parts"
        sentence="What goes on with a bearing, under the store's own numbers."
        actions={
          may(partsTable.create) && (
            <Button component={AppLink} href={paths.newPart(code)}>
              Enter a part
            </Button>
          )
        }
      />
      <StoresNav active="parts" />
      <FilterBar
        search={
          <SearchField
            placeholder="Number, code or description"
            value={q ?? ''}
            slash
            onSearch={(text) => change({ q: text || undefined })}
          />
        }
        active={[
          ...(q ? [{ key: 'q', label: `Search: ${q}`, onRemove: () => change({ q: undefined }) }] : []),
          ...(kind
            ? [{ key: 'kind', label: `Kind: ${partKindWords[kind]}`, onRemove: () => change({ kind: undefined }) }]
            : []),
        ]}
        onClear={clear}
      >
        <NativeSelect
          label="Kind"
          value={kind ?? ''}
          onChange={(event) => change({ kind: event.currentTarget.value || undefined })}
          data={[
            { value: '', label: 'All kinds' },
            ...PartKind.options.map((value) => ({ value, label: partKindWords[value] })),
          ]}
        />
      </FilterBar>
      {list.isPending && <LoadingRows what="parts" />}
      {list.isError && <ErrorState problem={shownProblem(list.error)} onRetry={() => void list.refetch()} />}
      {list.isSuccess && (
        <DataTable<Part>
          caption="Parts"
          columns={partColumns}
          rows={rows}
          rowKey={({ id }) => id}
          rowHref={({ id }) => paths.part(code, id)}
          sort={{ key: sort.replace('-', ''), descending: sort.startsWith('-') }}
          onSort={(next) => change({ sort: next && `${next.descending ? '-' : ''}${next.key}` })}
          more={more}
          empty={
            q || kind ? (
              <EmptyState
                title="No part matches"
                text="There may be one of another kind, or under another code."
                action={
                  <Button variant="default" onClick={clear}>
                    Show all parts
                  </Button>
                }
              />
            ) : (
              <EmptyState title="No part is entered yet" text="Stores enter parts; kits are then made of them." />
            )
          }
        />
      )}
    </>
  )
}
