import { batchMeterReadings } from '@shaftbook/contract/meter-readings'
import { useSearch } from '@tanstack/react-router'
import { Suspense } from 'react'
import { MeterSheetForm } from '../../features/setup/meter-sheet.tsx'
import { PartHead } from '../../features/setup/part-head.tsx'
import { setupTrail } from '../../features/setup/setup-trail.ts'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { FilterBar } from '../../ui/filter-bar.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { SearchField } from '../../ui/search-field.tsx'
import type { MetersSearch } from './setup-search.ts'

/** What many meters show, entered one after the other. */
export function ReadMetersPage() {
  const { code, may } = useSite()
  const { q }: MetersSearch = useSearch({ strict: false })
  const change = useSearchChange()
  const trail = setupTrail(code, { label: 'Hour meters', href: paths.setupPart(code, 'meters') })
  if (!may(batchMeterReadings))
    return (
      <EmptyState
        heading="h1"
        title="Your role does not enter meter readings"
        text="A technician, an engineer or a manager of the site does."
      />
    )
  return (
    <>
      <PartHead
        title="Read the meters"
        sentence="Type what each meter shows, Enter leads to the next. Due days follow at once; what is refused stays here."
        trail={trail}
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
      <Suspense fallback={<LoadingRows what="hour meters" />}>
        <MeterSheetForm search={q} />
      </Suspense>
    </>
  )
}
