import type { MountRecord } from '@shaftbook/contract/mounts'
import { useQuery } from '@tanstack/react-query'
import { formatCount } from '../../lib/format-count.ts'
import { formatDay } from '../../lib/format-day.ts'
import { useSite } from '../../session/site-access.tsx'
import { DefinitionList, type Definition } from '../../ui/definition-list.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { greasesQuery } from './mount-queries.ts'
import { methodWords } from './mount-readings.tsx'

const withUnit = (value: number | null, unit: string): string | null => (value === null ? null : `${value} ${unit}`)

export function MountPeople({ record }: { record: MountRecord }) {
  const { site } = useSite()
  const items: Definition[] = [
    { label: 'Mounted', value: <Timestamp at={record.mountedAt} timeZone={site.timeZone} relative={false} /> },
    { label: 'Fitted by', value: record.fitter },
    { label: 'Checked by', value: record.checker },
    {
      label: 'Signed',
      value: record.signedAt ? (
        <>
          {record.signedBy}, <Timestamp at={record.signedAt} timeZone={site.timeZone} relative={false} />
        </>
      ) : (
        'not signed: a draft'
      ),
    },
    { label: 'Why fitted', value: record.reason },
    { label: 'Permit', value: record.permitReference },
    {
      label: 'Run hours',
      value: record.runHours === null ? null : `${formatCount(record.runHours)} h`,
      note: record.noHoursReason,
    },
  ]
  return <DefinitionList items={items} />
}

export function MountParts({ record }: { record: MountRecord }) {
  const { code } = useSite()
  const greases = useQuery(greasesQuery(code))
  const grease = greases.data?.items.find(({ id }) => id === record.greaseId)?.name
  const { bearing, ringCount, ringWidthMm } = record
  const rings = ringCount === null ? null : ringCount === 0 ? 'none' : `${ringCount} of ${ringWidthMm ?? '?'} mm`
  const items: Definition[] = [
    {
      label: 'Bearing',
      value: bearing.designation,
      note: `Bore ${bearing.boreMm} mm${bearing.taper ? `, taper ${bearing.taper}` : ''}`,
    },
    { label: 'Class', value: record.clearanceClass },
    { label: 'Serial', value: bearing.serial },
    { label: 'Lot', value: bearing.lot },
    { label: 'Maker', value: bearing.maker },
    { label: 'Packed', value: bearing.packedOn && formatDay(bearing.packedOn) },
    { label: 'Sleeve', value: record.sleeveCode },
    { label: 'Nut', value: record.nutCode },
    { label: 'Washer or clip', value: record.lockingCode },
    { label: 'Rings', value: rings },
    { label: 'Cap bolts', value: withUnit(record.capBoltTorqueNm, 'N·m') },
    { label: 'Grease', value: grease },
    { label: 'In the bearing', value: withUnit(record.greaseBearingG, 'g') },
    { label: 'In the housing', value: withUnit(record.greaseHousingG, 'g') },
  ]
  return <DefinitionList items={items} />
}

export function MountWork({ record }: { record: MountRecord }) {
  const items: Definition[] = [
    {
      label: 'Method',
      value: methodWords[record.method],
      note: record.byFeelPerson && `judged by ${record.byFeelPerson}`,
    },
    { label: 'Zero point', value: record.zeroPointMethod },
    { label: 'Axial travel', value: withUnit(record.driveUpMm, 'mm') },
    { label: 'Nut turned', value: withUnit(record.nutAngleDeg, '°') },
    { label: 'Shaft diameter', value: withUnit(record.shaftDiameterMm, 'mm') },
    { label: 'Feeler set', value: record.gauge },
    { label: 'Temperature', value: withUnit(record.temperatureC, '°C') },
    {
      label: 'Turned by hand',
      value: record.turnsFree === null ? null : record.turnsFree ? 'free, no drag' : 'not free',
    },
  ]
  return <DefinitionList items={items} />
}
