import { NativeSelect } from '@mantine/core'
import type { LifeSummary } from '@shaftbook/contract/life'
import { EndKind } from '@shaftbook/contract/removals'
import { FilterBar } from '../../ui/filter-bar.tsx'
import { endKindWords, modeWords } from './life-words.ts'

interface RemovalFiltersProps {
  end: EndKind | undefined
  mode: string | undefined
  modes: LifeSummary['byMode']
  onChange: (change: { end?: string | undefined; mode?: string | undefined }) => void
}

/** Narrows the removals by how they ended and by failure mode. */
export function RemovalFilters({ end, mode, modes, onChange }: RemovalFiltersProps) {
  const known = modes.filter(({ modeClause }) => modeClause !== null)
  const chosen = known.find(({ modeClause }) => modeClause === mode)
  return (
    <FilterBar
      active={[
        ...(end
          ? [{ key: 'end', label: `Ending: ${endKindWords[end]}`, onRemove: () => onChange({ end: undefined }) }]
          : []),
        ...(mode
          ? [
              {
                key: 'mode',
                label: `Mode: ${chosen ? modeWords(chosen) : mode}`,
                onRemove: () => onChange({ mode: undefined }),
              },
            ]
          : []),
      ]}
      onClear={() => onChange({ end: undefined, mode: undefined })}
    >
      <NativeSelect
        label="Ending"
        value={end ?? ''}
        onChange={(event) => onChange({ end: event.currentTarget.value || undefined })}
        data={[
          { value: '', label: 'All endings' },
          ...EndKind.options.map((value) => ({ value, label: endKindWords[value] })),
        ]}
      />
      <NativeSelect
        label="Failure mode"
        value={mode ?? ''}
        onChange={(event) => onChange({ mode: event.currentTarget.value || undefined })}
        data={[
          { value: '', label: 'All modes' },
          ...known.map((each) => ({ value: each.modeClause ?? '', label: `${modeWords(each)} (${each.failures})` })),
        ]}
      />
    </FilterBar>
  )
}
