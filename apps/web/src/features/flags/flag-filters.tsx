import { NativeSelect } from '@mantine/core'
import { FlagKind } from '@shaftbook/contract/flags'
import { FilterBar, type ActiveFilter } from '../../ui/filter-bar.tsx'
import { SearchField } from '../../ui/search-field.tsx'
import type { FlagCounts } from './flag-counts-sentence.ts'
import { flagKindOrder, flagKinds } from './flag-kinds.ts'

export interface FlagFilterValues {
  kind?: FlagKind | undefined
  area?: string | undefined
  q?: string | undefined
}

interface FlagFiltersProps {
  values: FlagFilterValues
  onChange: (change: { [K in keyof FlagFilterValues]: string | undefined }) => void
  areas: readonly { id: string; name: string }[]
  /** Shown beside the kinds; absent where they do not fit what is listed. */
  counts: FlagCounts | undefined
  result: string | undefined
}

/** Search, area and kind of the flag list. */
export function FlagFilters({ values, onChange, areas, counts, result }: FlagFiltersProps) {
  const { kind, area, q } = values
  const areaName = areas.find(({ id }) => id === area)?.name ?? 'not known'
  const active: ActiveFilter[] = [
    ...(q ? [{ key: 'q', label: `Search: ${q}`, onRemove: () => onChange({ q: undefined }) }] : []),
    ...(area ? [{ key: 'area', label: `Area: ${areaName}`, onRemove: () => onChange({ area: undefined }) }] : []),
    ...(kind
      ? [{ key: 'kind', label: `Kind: ${flagKinds[kind].title}`, onRemove: () => onChange({ kind: undefined }) }]
      : []),
  ]
  return (
    <FilterBar
      search={
        <SearchField
          placeholder="Tag, machine or shaft"
          value={q ?? ''}
          onSearch={(text) => onChange({ q: text || undefined })}
        />
      }
      active={active}
      onClear={() => onChange({ q: undefined, area: undefined, kind: undefined })}
      result={result}
    >
      <NativeSelect
        label="Kind"
        value={kind ?? ''}
        onChange={(event) => onChange({ kind: event.currentTarget.value || undefined })}
        data={[
          { value: '', label: 'All kinds' },
          ...flagKindOrder.map((value) => ({ value, label: kindLabel(value, counts) })),
        ]}
      />
      <NativeSelect
        label="Area"
        value={area ?? ''}
        onChange={(event) => onChange({ area: event.currentTarget.value || undefined })}
        data={[{ value: '', label: 'All areas' }, ...areas.map(({ id, name }) => ({ value: id, label: name }))]}
      />
    </FilterBar>
  )
}

function kindLabel(kind: FlagKind, counts: FlagCounts | undefined): string {
  const { title } = flagKinds[kind]
  return counts ? `${title} (${counts.byKind.find((entry) => entry.kind === kind)?.open ?? 0})` : title
}
