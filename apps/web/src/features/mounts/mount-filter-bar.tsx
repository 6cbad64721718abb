import { NativeSelect } from '@mantine/core'
import { Verdict } from '@shaftbook/contract/judgement'
import { FilterBar, type ActiveFilter } from '../../ui/filter-bar.tsx'
import { SearchField } from '../../ui/search-field.tsx'
import { verdictWord } from '../../ui/verdict-mark.tsx'

export interface MountFilterValues {
  verdict?: Verdict | undefined
  area?: string | undefined
  state?: 'draft' | 'signed' | undefined
  q?: string | undefined
}

interface MountFilterBarProps {
  values: MountFilterValues
  areas: readonly { id: string; name: string }[]
  onChange: (change: { [K in keyof MountFilterValues]: string | undefined }) => void
  result: string | undefined
}

const stateWords = { draft: 'Drafts', signed: 'Signed' } as const

/** Search, verdict, area and drafts of the list of mounts. */
export function MountFilterBar({ values, areas, onChange, result }: MountFilterBarProps) {
  const { verdict, area, state, q } = values
  const areaName = areas.find(({ id }) => id === area)?.name ?? 'not known'
  const active: ActiveFilter[] = [
    ...(q ? [{ key: 'q', label: `Search: ${q}`, onRemove: () => onChange({ q: undefined }) }] : []),
    ...(verdict
      ? [
          {
            key: 'v',
            label: `Verdict: ${verdictWord(verdict).toLowerCase()}`,
            onRemove: () => onChange({ verdict: undefined }),
          },
        ]
      : []),
    ...(area ? [{ key: 'area', label: `Area: ${areaName}`, onRemove: () => onChange({ area: undefined }) }] : []),
    ...(state ? [{ key: 'state', label: stateWords[state], onRemove: () => onChange({ state: undefined }) }] : []),
  ]
  return (
    <FilterBar
      search={
        <SearchField
          placeholder="Tag, machine, bearing or fitter"
          value={q ?? ''}
          onSearch={(text) => onChange({ q: text || undefined })}
        />
      }
      active={active}
      onClear={() => onChange({ q: undefined, verdict: undefined, area: undefined, state: undefined })}
      result={result}
    >
      <NativeSelect
        label="Verdict"
        value={verdict ?? ''}
        onChange={(event) => onChange({ verdict: event.currentTarget.value || undefined })}
        data={[
          { value: '', label: 'All verdicts' },
          ...Verdict.options.map((value) => ({ value, label: verdictWord(value) })),
        ]}
      />
      <NativeSelect
        label="Area"
        value={area ?? ''}
        onChange={(event) => onChange({ area: event.currentTarget.value || undefined })}
        data={[{ value: '', label: 'All areas' }, ...areas.map(({ id, name }) => ({ value: id, label: name }))]}
      />
      <NativeSelect
        label="Drafts"
        value={state ?? ''}
        onChange={(event) => onChange({ state: event.currentTarget.value || undefined })}
        data={[
          { value: '', label: 'Signed and drafts' },
          { value: 'draft', label: 'Drafts only' },
          { value: 'signed', label: 'Signed only' },
        ]}
      />
    </FilterBar>
  )
}
