import { bearingTypes } from '@shaftbook/contract/register-tables'
import { useSearch } from '@tanstack/react-router'
import { PartHead } from '../../features/setup/part-head.tsx'
import { bearingTypeColumns } from '../../features/setup/register-columns.tsx'
import { RegisterTable } from '../../features/setup/register-table.tsx'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { FilterBar } from '../../ui/filter-bar.tsx'
import { SearchField } from '../../ui/search-field.tsx'
import type { BearingTypesSearch } from './setup-search.ts'

/** The bearing types of the site. */
export function BearingTypesPage() {
  const { code, may } = useSite()
  const { q, sort }: BearingTypesSearch = useSearch({ strict: false })
  const change = useSearchChange()
  const mayEnter = may(bearingTypes.create)
  return (
    <>
      <PartHead
        title="Bearing types"
        sentence="A position asks for one of these; a bearing that is fitted is one of them."
        act={mayEnter && { label: 'Enter a bearing type', href: paths.enterRow(code, 'bearing-types') }}
      />
      <FilterBar
        search={
          <SearchField
            placeholder="Designation"
            value={q ?? ''}
            onSearch={(text) => change({ q: text || undefined })}
          />
        }
        active={q ? [{ key: 'q', label: `Search: ${q}`, onRemove: () => change({ q: undefined }) }] : []}
        onClear={() => change({ q: undefined })}
      />
      <RegisterTable
        name="bearing-types"
        caption="Bearing types"
        filter={{ search: q, sort }}
        columns={bearingTypeColumns}
        rowHref={mayEnter ? (row) => paths.changeRow(code, 'bearing-types', row.id) : undefined}
        sort={sort ? { key: sort.replace('-', ''), descending: sort.startsWith('-') } : undefined}
        onSort={(next) => change({ sort: next && `${next.descending ? '-' : ''}${next.key}` })}
        empty={
          <EmptyState
            title={q ? 'No bearing type matches' : 'No bearing type is entered yet'}
            text={q ? 'Search by another part of the designation.' : 'Enter the types that the positions take.'}
          />
        }
      />
    </>
  )
}
