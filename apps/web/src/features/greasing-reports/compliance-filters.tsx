import { NativeSelect } from '@mantine/core'
import { complianceGroupings, type ComplianceGrouping } from '@shaftbook/contract/greasing-reports'
import { FilterBar, type ActiveFilter } from '../../ui/filter-bar.tsx'
import { compliancePeriods, groupingWords } from './compliance-words.ts'

export interface ComplianceValues {
  months?: (typeof compliancePeriods)[number] | undefined
  by?: ComplianceGrouping | undefined
  area?: string | undefined
  person?: string | undefined
  round?: string | undefined
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
  rounds: readonly Named[]
  onChange: (change: { [K in keyof ComplianceValues]: string | undefined }) => void
}

const filters = [
  ['area', 'Area'],
  ['person', 'Person'],
  ['round', 'Round'],
  ['position', 'Position'],
] as const

/** Period, grouping, area and person. A position is chosen on its own page and taken away here. */
export function ComplianceFilters({ values, areas, people, rounds, onChange }: ComplianceFiltersProps) {
  const named = [...areas, ...people, ...rounds]
  const active = filters.flatMap(([key, word]): ActiveFilter[] => {
    const value = values[key]
    if (value === undefined) return []
    const name = key === 'position' ? 'one only' : (named.find(({ id }) => id === value)?.name ?? 'not known')
    return [{ key, label: `${word}: ${name}`, onRemove: () => onChange({ [key]: undefined }) }]
  })
  const choice = (key: 'area' | 'person' | 'round', all: string, from: readonly Named[]) => (
    <NativeSelect
      label={groupingWords[key]}
      value={values[key] ?? ''}
      onChange={(event) => onChange({ [key]: event.currentTarget.value || undefined })}
      data={[{ value: '', label: all }, ...from.map(({ id, name }) => ({ value: id, label: name }))]}
    />
  )
  return (
    <FilterBar
      active={active}
      onClear={() => onChange({ area: undefined, person: undefined, round: undefined, position: undefined })}
    >
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
      {rounds.length > 0 && choice('round', 'With and without', rounds)}
    </FilterBar>
  )
}
