import type { PositionOverview } from '@shaftbook/contract/position-views'
import { DefinitionList, type Definition } from '../../ui/definition-list.tsx'

const seats = {
  'adapter-sleeve': 'adapter sleeve',
  'withdrawal-sleeve': 'withdrawal sleeve',
  'tapered-journal': 'tapered journal',
  cylindrical: 'cylindrical seat',
} as const

/** Seat, housing and shaft: what has to fit together here. */
export function SeatFacts({ place }: { place: PositionOverview }) {
  const { position, shaft, bearingType, kit } = place
  const partOf = (...kinds: string[]) =>
    kit?.lines
      .filter(({ kind }) => kinds.includes(kind))
      .map(({ designation, quantity }) => (quantity === 1 ? designation : `${quantity} × ${designation}`))
      .join(', ')
  const onSleeve = position.seat === 'adapter-sleeve' || position.seat === 'withdrawal-sleeve'
  const items: Definition[] = [
    {
      label: 'This end',
      value: position.locating ? 'locating' : 'non-locating',
      note: position.locating ? 'holds the shaft axially' : 'lets the shaft slide',
    },
    {
      label: 'Bearing type',
      value: bearingType.designation,
      note: `${bearingType.boreMm} × ${bearingType.outsideDiameterMm} × ${bearingType.widthMm} mm${bearingType.taper ? `, taper ${bearingType.taper}` : ', cylindrical bore'}`,
    },
    { label: 'Seat', value: seats[position.seat], note: onSleeve ? partOf('sleeve') : undefined },
    ...(position.seat === 'cylindrical' ? [] : [{ label: 'Nut and lock', value: partOf('nut', 'washer', 'clip') }]),
    {
      label: 'Shaft diameter',
      value: position.shaftDiameterMm === null ? null : `${position.shaftDiameterMm} mm, ${position.shaftSystem}`,
      note:
        position.shaftSystem === 'inch' ? 'an inch shaft takes inch sleeve and nut: metric ones look alike' : undefined,
    },
    {
      label: 'Housing',
      value: position.housingCode,
      note:
        position.housingSeatWidthMm === null
          ? 'seat width not measured'
          : `seat ${position.housingSeatWidthMm} mm wide`,
    },
    ...(position.locating ? [{ label: 'Locating rings', value: partOf('ring') }] : []),
    {
      label: 'Shaft',
      value: shaft.name,
      note: [
        shaft.speedRpm === null ? 'speed not known' : `${shaft.speedRpm} rev/min`,
        shaft.attitude,
        shaft.hollowBoreMm > 0 ? `bored ${shaft.hollowBoreMm} mm` : 'solid',
      ].join(', '),
    },
  ]
  return <DefinitionList items={items} />
}
