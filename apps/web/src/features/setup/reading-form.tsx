import { createMeterReading, type MeterReading } from '@shaftbook/contract/meter-readings'
import { SegmentedControl } from '@mantine/core'
import { useState } from 'react'
import { v7 as newId } from 'uuid'
import { call } from '../../api/call.ts'
import { plantClock } from '../../lib/plant-time.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { useNotice } from '../../ui/notice.tsx'
import type { FieldGroup } from './form-spec.ts'
import { RecordForm } from './record-form.tsx'
import type { RowOf } from './registers.ts'

type Kind = MeterReading['kind']

const groups: Readonly<Record<Kind, readonly FieldGroup[]>> = {
  reading: [
    {
      fields: [
        { name: 'shownHours', label: 'The meter shows', kind: 'number', unit: 'h' },
        { name: 'readAt', label: 'Read at', kind: 'moment' },
      ],
    },
  ],
  exchange: [
    {
      text: 'The hours of the machine go on: the new meter counts from where it starts.',
      fields: [
        { name: 'shownHours', label: 'The old meter showed at its end', kind: 'number', unit: 'h' },
        { name: 'newMeterShowsHours', label: 'The new meter starts at', kind: 'number', unit: 'h' },
        { name: 'readAt', label: 'Exchanged at', kind: 'moment' },
      ],
    },
  ],
}

/** Enters what a meter shows, or that it was exchanged. */
export function ReadingForm({ meter }: { meter: RowOf<'meters'> }) {
  const [kind, setKind] = useState<Kind>('reading')
  const [entry, setEntry] = useState(0)
  return (
    <>
      <SegmentedControl
        aria-label="What happened"
        value={kind}
        onChange={(value) => setKind(value)}
        data={[
          { value: 'reading', label: 'It was read' },
          { value: 'exchange', label: 'It was exchanged' },
        ]}
        mb="md"
      />
      <OneReading key={`${kind} ${entry}`} meter={meter} kind={kind} onSaved={() => setEntry(entry + 1)} />
    </>
  )
}

function OneReading({ meter, kind, onSaved }: { meter: RowOf<'meters'>; kind: Kind; onSaved: () => void }) {
  const { code, site } = useSite()
  const notice = useNotice()
  const [id] = useState(() => newId())
  const [start] = useState(() => ({ readAt: plantClock(new Date(), site.timeZone) }))
  return (
    <RecordForm
      groups={groups[kind]}
      start={start}
      submitLabel={kind === 'reading' ? 'Enter the reading' : 'Enter the exchange'}
      save={(body) =>
        call(createMeterReading, { params: { site: code }, body: { id, meterId: meter.id, kind, ...body } as never })
      }
      onSaved={() => {
        notice.done(
          kind === 'reading'
            ? 'The reading is entered; due days follow it.'
            : 'The exchange is entered; the hours of the machine go on.',
        )
        onSaved()
      }}
      cancelHref={paths.place(code, 'machine', meter.machineId)}
    />
  )
}
