import { Select } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { parts } from '@shaftbook/contract/register-tables'
import { keepPreviousData, queryOptions, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { call } from '../../api/call.ts'
import { useSite } from '../../session/site-access.tsx'
import { partName } from './kit-entry.ts'

interface PartPickerProps {
  label: string
  value: { partId: string; partName: string }
  onChange: (part: { partId: string; partName: string }) => void
  error: string | undefined
}

const offeredQuery = (site: string, search: string) =>
  queryOptions({
    queryKey: ['stores', site, 'offered', search],
    queryFn: ({ signal }) => call(parts.list, { params: { site }, query: { search, limit: 20 } }, signal),
    placeholderData: keepPreviousData,
  })

/** Chooses a part by typing any of its number, code or description. */
export function PartPicker({ label, value, onChange, error }: PartPickerProps) {
  const { code } = useSite()
  const [typed, setTyped] = useState('')
  const [search] = useDebouncedValue(typed, 250)
  const offered = useQuery(offeredQuery(code, search === value.partName ? '' : search))
  const choices = (offered.data?.items ?? []).map((part) => ({ value: part.id, label: partName(part) }))
  const chosenIsOffered = choices.some((choice) => choice.value === value.partId)
  const own = value.partId === '' || chosenIsOffered ? [] : [{ value: value.partId, label: value.partName }]
  return (
    <Select
      label={label}
      placeholder="Type a code or number"
      searchable
      data={[...own, ...choices]}
      value={value.partId || null}
      error={error}
      filter={({ options }) => options}
      nothingFoundMessage="No such part: enter it first"
      onSearchChange={setTyped}
      onChange={(partId, option) => partId && option && onChange({ partId, partName: option.label })}
    />
  )
}
