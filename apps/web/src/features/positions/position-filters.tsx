import { NativeSelect } from '@mantine/core'
import { Verdict } from '@shaftbook/contract/judgement'
import { dueStates, dueWord, type DueState } from '../../ui/due-mark.tsx'
import { FilterBar, type ActiveFilter } from '../../ui/filter-bar.tsx'
import { SearchField } from '../../ui/search-field.tsx'
import { verdictWord } from '../../ui/verdict-mark.tsx'

export interface PositionFilterValues {
  q?: string | undefined
  area?: string | undefined
  machine?: string | undefined
  verdict?: Verdict | undefined
  due?: DueState | undefined
}
type FilterChange = { [K in keyof PositionFilterValues]: string | undefined }

interface PositionFiltersProps {
  values: PositionFilterValues
  onChange: (change: FilterChange) => void
  onEnter: (text: string) => void
  areas: readonly { id: string; name: string }[]
  /** The machine that the list is narrowed to, as people call it. */
  machineName: string | undefined
  /** Whether area, verdict and due state can be chosen: the tree has no use for them. */
  choices: boolean
  result: string | undefined
}

/** The one search over tag, machine, bearing and kit part, and what narrows the table. */
export function PositionFilters(props: PositionFiltersProps) {
  const { values, onChange, onEnter, areas, choices, result } = props
  const { q, area, verdict, due } = values
  const choose = (key: keyof PositionFilterValues) => (event: { currentTarget: HTMLSelectElement }) =>
    onChange({ [key]: event.currentTarget.value || undefined })
  return (
    <FilterBar
      search={
        <SearchField
          label="Search"
          placeholder="Tag, machine, bearing or part of the kit"
          value={q ?? ''}
          slash
          onSearch={(text) => onChange({ q: text || undefined })}
          onEnter={onEnter}
        />
      }
      active={activeFilters(props)}
      onClear={() =>
        onChange({ q: undefined, area: undefined, machine: undefined, verdict: undefined, due: undefined })
      }
      result={result}
    >
      {choices && (
        <>
          <NativeSelect
            label="Area"
            value={area ?? ''}
            onChange={choose('area')}
            data={[{ value: '', label: 'All areas' }, ...areas.map(({ id, name }) => ({ value: id, label: name }))]}
          />
          <NativeSelect
            label="Mount"
            value={verdict ?? ''}
            onChange={choose('verdict')}
            data={[
              { value: '', label: 'Any verdict' },
              ...Verdict.options.map((value) => ({ value, label: verdictWord(value) })),
            ]}
          />
          <NativeSelect
            label="Greasing"
            value={due ?? ''}
            onChange={choose('due')}
            data={[{ value: '', label: 'Any state' }, ...dueStates.map((value) => ({ value, label: dueWord(value) }))]}
          />
        </>
      )}
    </FilterBar>
  )
}

function activeFilters({ values, onChange, areas, machineName }: PositionFiltersProps): ActiveFilter[] {
  const { q, area, machine, verdict, due } = values
  const filter = (key: keyof PositionFilterValues, label: string | undefined): ActiveFilter[] =>
    label === undefined ? [] : [{ key, label, onRemove: () => onChange({ [key]: undefined }) }]
  return [
    ...filter('q', q && `Search: ${q}`),
    ...filter('machine', machine && `Machine: ${machineName ?? '…'}`),
    ...filter('area', area && `Area: ${areas.find(({ id }) => id === area)?.name ?? '…'}`),
    ...filter('verdict', verdict && `Mount: ${verdictWord(verdict).toLowerCase()}`),
    ...filter('due', due && `Greasing: ${dueWord(due).toLowerCase()}`),
  ]
}
