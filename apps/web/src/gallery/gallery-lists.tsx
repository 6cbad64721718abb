import { Button, Select, TextInput } from '@mantine/core'
import { useState } from 'react'
import { formatCount } from '../lib/format-count.ts'
import { paths } from '../paths.ts'
import { DataTable } from '../ui/data-table.tsx'
import type { DataColumn } from '../ui/data-table-types.ts'
import { EmptyState } from '../ui/empty-state.tsx'
import { FilterBar } from '../ui/filter-bar.tsx'
import { FlagList, FlagRow } from '../ui/flag-row.tsx'
import { Timestamp } from '../ui/timestamp.tsx'
import { VerdictMark, type Verdict } from '../ui/verdict-mark.tsx'
import { GallerySection } from './gallery-section.tsx'

interface SampleRow {
  tag: string
  machine: string
  bearing: string
  verdict: Verdict
  hours: number
  greased: string
}

const verdicts: Verdict[] = ['inside', 'inside', 'not-proven', 'under', 'inside', 'over']
const machines = ['Bucket elevator', 'Belt conveyor', 'Aspiration fan', 'Dryer fan', 'Ship loader boom']

function sampleRows(count: number): SampleRow[] {
  return Array.from({ length: count }, (_, i) => ({
    tag: `${['BE', 'BC', 'AF', 'DF', 'SL'][i % 5]}-${String(1 + Math.floor(i / 2)).padStart(2, '0')} / ${i % 2 ? 'NDE' : 'DE'}`,
    machine: `${machines[i % 5]} ${1 + Math.floor(i / 2)}`,
    bearing: ['22220 K/C3', '22224 K', '23226 K/C3', '22318 K'][i % 4]!,
    verdict: verdicts[i % 6]!,
    hours: 1200 + ((i * 7919) % 40_000),
    greased: new Date(Date.UTC(2026, 0, 28 - (i % 27), 9)).toISOString(),
  }))
}

const columns: DataColumn<SampleRow>[] = [
  { key: 'tag', header: 'Position', cell: (row) => row.tag, sortValue: (row) => row.tag, phone: 'title' },
  { key: 'machine', header: 'Machine', cell: (row) => row.machine, sortValue: (row) => row.machine },
  { key: 'bearing', header: 'Bearing', cell: (row) => row.bearing },
  { key: 'verdict', header: 'Mount', cell: (row) => <VerdictMark verdict={row.verdict} size="s" />, phone: 'aside' },
  {
    key: 'hours',
    header: 'Run hours',
    unit: 'h',
    cell: (row) => formatCount(row.hours),
    sortValue: (row) => row.hours,
    align: 'right',
  },
  {
    key: 'greased',
    header: 'Last greased',
    cell: (row) => <Timestamp at={row.greased} now={new Date('2026-02-14')} dateOnly />,
    sortValue: (row) => row.greased,
  },
]

const shortRows = sampleRows(7)
const longRows = sampleRows(600)

export function GalleryLists() {
  const [area, setArea] = useState<string | null>('Drying house')
  const [kind, setKind] = useState<string | null>('Mount over')
  const href = paths.position('harrow-point', 'BE-07 / DE')
  const active = [
    ...(area ? [{ key: 'area', label: `Area: ${area}`, onRemove: () => setArea(null) }] : []),
    ...(kind ? [{ key: 'kind', label: `Kind: ${kind}`, onRemove: () => setKind(null) }] : []),
  ]
  return (
    <>
      <GallerySection title="Flags">
        <FilterBar
          search={<TextInput label="Search" placeholder="Tag or machine" />}
          active={active}
          onClear={() => {
            setArea(null)
            setKind(null)
          }}
          result="4 of 37 flags"
        >
          <Select
            label="Area"
            data={['Drying house', 'Quay']}
            value={area}
            onChange={setArea}
            placeholder="All areas"
          />
          <Select
            label="Kind"
            data={['Mount over', 'Regreasing overdue']}
            value={kind}
            onChange={setKind}
            placeholder="All kinds"
          />
        </FilterBar>
        <FlagList label="Flags">
          <FlagRow
            urgency="now"
            what="Regreasing overdue"
            tag="BE-07 / DE"
            href={href}
            place="head shaft of bucket elevator 7, elevators"
            measure="38 days late"
            since="since 7 Jan 2026"
            action={<Button size="sm">Log greasing</Button>}
            putOff={
              <Button size="sm" variant="subtle">
                Put off
              </Button>
            }
          />
          <FlagRow
            urgency="now"
            what="Mount over its band"
            tag="DF-02 / NDE"
            href={href}
            place="dryer fan 2, drying house"
            measure={
              <>
                <VerdictMark verdict="over" /> by 0.012 mm
              </>
            }
            since="since 12 Feb 2026; the engineer can clear it"
            action={<Button size="sm">Log remount</Button>}
            putOff={
              <Button size="sm" variant="subtle">
                Put off
              </Button>
            }
          />
          <FlagRow
            urgency="soon"
            what="No locating position on the shaft"
            tag="BC-11"
            href={href}
            place="drive pulley shaft of belt conveyor 11, quay"
            measure="0 of 2 positions locate"
            action={<Button size="sm">Set locating</Button>}
          />
          <FlagRow
            urgency="watch"
            what="Past its expected life"
            tag="SL-01 / DE"
            href={href}
            place="ship loader boom, quay"
            measure="31 200 h of 28 000 h"
            putOffUntil="put off until 1 Apr 2026 by Maren Oduya: bearing is on order"
            action={
              <Button size="sm" variant="default">
                Take up again
              </Button>
            }
          />
        </FlagList>
      </GallerySection>
      <GallerySection title="Table">
        <DataTable
          caption="Sample positions"
          columns={columns}
          rows={shortRows}
          rowKey={(row) => row.tag}
          rowHref={(row) => paths.position('harrow-point', row.tag)}
          more={{ total: 160, hasMore: true, loading: false, onMore: () => undefined }}
          empty={null}
        />
      </GallerySection>
      <GallerySection title="Table of 600 rows, in a window">
        <details>
          <summary>Show it</summary>
          <DataTable
            caption="Many positions"
            columns={columns}
            rows={longRows}
            rowKey={(row) => row.tag}
            empty={null}
          />
        </details>
      </GallerySection>
      <GallerySection title="Empty table">
        <DataTable
          caption="No positions"
          columns={columns}
          rows={[]}
          rowKey={(row) => row.tag}
          empty={
            <EmptyState
              heading="h3"
              title="No position matches"
              text="Nothing in the drying house carries 22220 K/C3. Look in all areas, or search by another bearing."
              action={<Button variant="default">Look in all areas</Button>}
            />
          }
        />
      </GallerySection>
    </>
  )
}
