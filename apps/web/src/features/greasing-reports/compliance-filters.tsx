import { NativeSelect } from '@mantine/core'
import { complianceGroupings, type ComplianceGrouping } from '@shaftbook/contract/greasing-reports'
import { FilterBar, type ActiveFilter } from '../../ui/filter-bar.tsx'
import { compliancePeriods, groupingWords } from './compliance-words.ts'

export interface ComplianceValues {
  months?: (typeof compliancePeriods)[number] | undefined
  by?: ComplianceGrouping | undefined
  area?: string | undefined
  person?: string | undefined
  position?: string | undefined
}

interface Named {
  id: string
  name: string
}

interface ComplianceFiltersProps {
  values: ComplianceValues
  areas: readonly Named[]
  people: readonly Named[]
  onChange: (change: { [K in keyof ComplianceValues]: string | undefined }) => void
}

const filters = [
  ['area', 'Area'],
  ['person', 'Person'],
  ['position', 'Position'],
] as const

/** Period, grouping, area and person. A position is chosen on its own page and taken away here. */
export function ComplianceFilters({ values, areas, people, onChange }: ComplianceFiltersProps) {
  const named = [...areas, ...people]
  const active = filters.flatMap(([key, word]): ActiveFilter[] => {
    const value = values[key]
    if (value === undefined) return []
    const name = key === 'position' ? 'one only' : (named.find(({ id }) => id === value)?.name ?? 'not known')
    return [{ key, label: `${word}: ${name}`, onRemove: () => onChange({ [key]: undefined }) }]
  })
  const choice = (key: 'area' | 'person', all: string, from: readonly Named[]) => (
    <NativeSelect
      label={key === 'area' ? 'Area' : 'Person'}
      value={values[key] ?? ''}
      onChange={(event) => onChange({ [key]: event.currentTarget.value || undefined })}
      data={[{ value: '', label: all }, ...from.map(({ id, name }) => ({ value: id, label: name }))]}
    />
  )
  return (
    <FilterBar active={active} onClear={() => onChange({ area: undefined, person: undefined, position: undefined })}>
      <NativeSelect
        label="Period"
        value={values.months ?? '12'}
        onChange={(event) => onChange({ months: event.currentTarget.value })}
        data={compliancePeriods.map((value) => ({ value, label: `${value} months` }))}
      />
      <NativeSelect
        label="Put together by"
        value={values.by ?? 'area'}
        onChange={(event) => onChange({ by: event.currentTarget.value })}
        data={complianceGroupings.map((value) => ({ value, label: groupingWords[value] }))}
      />
      {choice('area', 'All areas', areas)}
      {choice('person', 'Everybody', people)}
    </FilterBar>
  )
}
