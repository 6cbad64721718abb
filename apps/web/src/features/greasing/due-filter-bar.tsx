import { NativeSelect } from '@mantine/core'
import { GreaseTask } from '@shaftbook/contract/grease-plans'
import { DueState } from '@shaftbook/contract/greasing'
import { dueWord } from '../../ui/due-mark.tsx'
import { FilterBar, type ActiveFilter } from '../../ui/filter-bar.tsx'
import { SearchField } from '../../ui/search-field.tsx'
import { taskWords } from './task-words.ts'

export interface DueFilterValues {
  area?: string | undefined
  task?: GreaseTask | undefined
  state?: DueState | undefined
  q?: string | undefined
}

interface DueFilterBarProps {
  values: DueFilterValues
  areas: readonly { id: string; name: string }[]
  onChange: (change: { [K in keyof DueFilterValues]: string | undefined }) => void
  result: string | undefined
}

/** Search, task, area and state of the due list. */
export function DueFilterBar({ values, areas, onChange, result }: DueFilterBarProps) {
  const { area, task, state, q } = values
  const areaName = areas.find(({ id }) => id === area)?.name ?? 'not known'
  const active: ActiveFilter[] = [
    ...(q ? [{ key: 'q', label: `Search: ${q}`, onRemove: () => onChange({ q: undefined }) }] : []),
    ...(area ? [{ key: 'area', label: `Area: ${areaName}`, onRemove: () => onChange({ area: undefined }) }] : []),
    ...(task
      ? [
          {
            key: 'task',
            label: `Task: ${taskWords[task].toLowerCase()}`,
            onRemove: () => onChange({ task: undefined }),
          },
        ]
      : []),
    ...(state
      ? [
          {
            key: 'state',
            label: `State: ${dueWord(state).toLowerCase()}`,
            onRemove: () => onChange({ state: undefined }),
          },
        ]
      : []),
  ]
  return (
    <FilterBar
      search={
        <SearchField
          placeholder="Tag or machine"
          value={q ?? ''}
          onSearch={(text) => onChange({ q: text || undefined })}
        />
      }
      active={active}
      onClear={() => onChange({ q: undefined, area: undefined, task: undefined, state: undefined })}
      result={result}
    >
      <NativeSelect
        label="Task"
        value={task ?? ''}
        onChange={(event) => onChange({ task: event.currentTarget.value || undefined })}
        data={[
          { value: '', label: 'All tasks' },
          ...GreaseTask.options.map((value) => ({ value, label: taskWords[value] })),
        ]}
      />
      <NativeSelect
        label="State"
        value={state ?? ''}
        onChange={(event) => onChange({ state: event.currentTarget.value || undefined })}
        data={[
          { value: '', label: 'All states' },
          ...DueState.options.map((value) => ({ value, label: dueWord(value) })),
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
