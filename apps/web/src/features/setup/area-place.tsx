import { areas, machines } from '@shaftbook/contract/register-tables'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { PartHead } from './part-head.tsx'
import { PlaceFacts } from './place-facts.tsx'
import { machineColumns } from './register-columns.tsx'
import { RegisterTable } from './register-table.tsx'
import type { RowOf } from './registers.ts'
import type { TrailStep } from './setup-trail.ts'

/** An area and its machines. */
export function AreaPlace({ area, trail }: { area: RowOf<'areas'>; trail: readonly TrailStep[] }) {
  const { code, may } = useSite()
  return (
    <>
      <PartHead
        title={area.name}
        trail={trail}
        act={may(machines.create) && { label: 'Enter a machine', href: paths.enterRow(code, 'machines', area.id) }}
      />
      <PlaceFacts
        facts={[
          { label: 'Code', value: area.code },
          { label: 'Walking order', value: area.walkingOrder },
        ]}
        change={may(areas.change) && { label: 'Change the area', href: paths.changeRow(code, 'areas', area.id) }}
      />
      <RegisterTable
        name="machines"
        caption="Machines"
        filter={{ areaId: area.id }}
        columns={machineColumns}
        rowHref={(row) => paths.place(code, 'machine', row.id)}
        empty={<EmptyState title="No machine is entered here yet" text="A machine has one or more shafts." />}
      />
    </>
  )
}
