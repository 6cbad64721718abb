import { createMeterReading, type MeterReading } from '@shaftbook/contract/meter-readings'
import { meters } from '@shaftbook/contract/register-tables'
import { useInfiniteQuery, useQuery } from '@tanstack/react-query'
import { useParams } from '@tanstack/react-router'
import { listed } from '../../api/listed.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { PartHead } from '../../features/setup/part-head.tsx'
import { PartSection } from '../../features/setup/part-section.tsx'
import { placeTrail, usePlaces } from '../../features/setup/place-trail.ts'
import { ReadingForm } from '../../features/setup/reading-form.tsx'
import { registerQueries } from '../../features/setup/registers.ts'
import { setupQueries } from '../../features/setup/setup-queries.ts'
import { formatCount } from '../../lib/format-count.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { DataTable } from '../../ui/data-table.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { EmptyState } from '../../ui/empty-state.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'

/** An hour meter: enter what it shows, and its readings so far. */
export function MeterPage() {
  const { code, may } = useSite()
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const meter = useQuery(registerQueries.row(code, 'meters', id))
  const places = usePlaces(code, 'machine', meter.data?.machineId)
  if (meter.isPending) return <LoadingRows what="the hour meter" />
  if (meter.isError)
    return <ErrorState heading="h1" problem={shownProblem(meter.error)} onRetry={() => void meter.refetch()} />
  return (
    <>
      <PartHead
        title={places.machine ? `${meter.data.name} of ${places.machine.tag}` : meter.data.name}
        trail={placeTrail(code, places)}
        act={may(meters.change) && { label: 'Change the hour meter', href: paths.changeRow(code, 'meters', id) }}
      />
      {may(createMeterReading) && (
        <PartSection title="Enter a reading">
          <ReadingForm meter={meter.data} />
        </PartSection>
      )}
      <PartSection title="Readings">
        <Readings meterId={id} />
      </PartSection>
    </>
  )
}

function Readings({ meterId }: { meterId: string }) {
  const { code, site } = useSite()
  const readings = useInfiniteQuery(setupQueries.readings(code, meterId))
  if (readings.isPending) return <LoadingRows what="readings" />
  if (readings.isError)
    return <ErrorState problem={shownProblem(readings.error)} onRetry={() => void readings.refetch()} />
  const { rows, more } = listed(readings)
  return (
    <DataTable
      caption="Readings, newest first"
      columns={readingColumns(site.timeZone)}
      rows={rows}
      rowKey={({ id }) => id}
      more={more}
      empty={<EmptyState heading="h3" title="No reading yet" text="Until there are two, run hours are estimated." />}
    />
  )
}

function kindWords(reading: MeterReading): string {
  if (reading.kind === 'exchange')
    return `exchanged; the new one started at ${formatCount(reading.newMeterShowsHours ?? 0)} h`
  return reading.correctsId ? `corrected: ${reading.correctionReason}` : 'read'
}

function readingColumns(timeZone: string): DataColumn<MeterReading>[] {
  return [
    {
      key: 'at',
      header: 'When',
      cell: (reading) => <Timestamp at={reading.readAt} timeZone={timeZone} relative={false} />,
      phone: 'title',
    },
    { key: 'kind', header: 'What', cell: (reading) => kindWords(reading) },
    { key: 'by', header: 'By', cell: (reading) => reading.readBy },
    { key: 'shown', header: 'Shown', unit: 'h', cell: (reading) => formatCount(reading.shownHours), align: 'right' },
    {
      key: 'total',
      header: 'Hours of the machine',
      unit: 'h',
      cell: (reading) => formatCount(reading.totalHours),
      align: 'right',
    },
  ]
}
