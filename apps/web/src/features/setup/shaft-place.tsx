import { positions, shafts } from '@shaftbook/contract/register-tables'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { PartHead } from './part-head.tsx'
import { PlaceFacts } from './place-facts.tsx'
import { positionColumns } from './register-columns.tsx'
import { RegisterTable } from './register-table.tsx'
import { attitudeWords } from './register-words.ts'
import type { RowOf } from './registers.ts'
import type { TrailStep } from './setup-trail.ts'

/** A shaft and its positions. */
export function ShaftPlace({ shaft, trail }: { shaft: RowOf<'shafts'>; trail: readonly TrailStep[] }) {
  const { code, may } = useSite()
  const mayChange = may(positions.change)
  return (
    <>
      <PartHead
        title={`${shaft.code} ${shaft.name}`}
        trail={trail}
        act={may(positions.create) && { label: 'Enter a position', href: paths.enterRow(code, 'positions', shaft.id) }}
      />
      <PlaceFacts
        facts={[
          { label: 'Attitude', value: attitudeWords[shaft.attitude] },
          { label: 'Speed', value: shaft.speedRpm, unit: 'rev/min' },
          { label: 'Bore through', value: shaft.hollowBoreMm === 0 ? 'solid' : `${shaft.hollowBoreMm} mm` },
          ...(shaft.locatingOverrideReason
            ? [{ label: 'Locating left open', value: shaft.locatingOverrideReason }]
            : []),
        ]}
        change={may(shafts.change) && { label: 'Change the shaft', href: paths.changeRow(code, 'shafts', shaft.id) }}
      />
      <RegisterTable
        name="positions"
        caption="Positions"
        filter={{ shaftId: shaft.id }}
        columns={positionColumns}
        rowHref={
          mayChange ? (row) => paths.changeRow(code, 'positions', row.id) : (row) => paths.position(code, row.id)
        }
        empty={
          <EmptyState
            title="No position is entered yet"
            text="A position takes one bearing; one of the shaft's locates it."
          />
        }
      />
    </>
  )
}
