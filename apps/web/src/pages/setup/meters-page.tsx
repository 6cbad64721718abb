import { batchMeterReadings } from '@shaftbook/contract/meter-readings'
import { useSearch } from '@tanstack/react-router'
import { PartHead } from '../../features/setup/part-head.tsx'
import { machineColumns } from '../../features/setup/register-columns.tsx'
import { RegisterTable } from '../../features/setup/register-table.tsx'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { FilterBar } from '../../ui/filter-bar.tsx'
import { SearchField } from '../../ui/search-field.tsx'
import type { MetersSearch } from './setup-search.ts'

/** The way to an hour meter: by its machine. */
export function MetersPage() {
  const { code, may } = useSite()
  const { q }: MetersSearch = useSearch({ strict: false })
  const change = useSearchChange()
  return (
    <>
      <PartHead
        title="Hour meters"
        sentence="Choose the machine; its meter and readings stand there."
        act={may(batchMeterReadings) && { label: 'Read the meters', href: paths.readMeters(code) }}
      />
      <FilterBar
        search={
          <SearchField
            label="Machine"
            placeholder="Tag or name"
            value={q ?? ''}
            onSearch={(text) => change({ q: text || undefined })}
          />
        }
        active={q ? [{ key: 'q', label: `Machine: ${q}`, onRemove: () => change({ q: undefined }) }] : []}
        onClear={() => change({ q: undefined })}
      />
      <RegisterTable
        name="machines"
        caption="Machines"
        filter={{ search: q }}
        columns={machineColumns}
        rowHref={(row) => paths.place(code, 'machine', row.id)}
        empty={<EmptyState title={q ? 'No machine matches' : 'No machine is entered yet'} />}
      />
    </>
  )
}
