import { machines, meters, shafts } from '@shaftbook/contract/register-tables'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { PartHead } from './part-head.tsx'
import { PartSection } from './part-section.tsx'
import { PlaceFacts } from './place-facts.tsx'
import { meterColumns, shaftColumns } from './register-columns.tsx'
import { RegisterTable } from './register-table.tsx'
import type { RowOf } from './registers.ts'
import type { TrailStep } from './setup-trail.ts'

/** A machine with its shafts and its hour meter. */
export function MachinePlace({ machine, trail }: { machine: RowOf<'machines'>; trail: readonly TrailStep[] }) {
  const { code, may } = useSite()
  const ofMachine = { machineId: machine.id }
  return (
    <>
      <PartHead
        title={`${machine.tag} ${machine.name}`}
        trail={trail}
        act={may(shafts.create) && { label: 'Enter a shaft', href: paths.enterRow(code, 'shafts', machine.id) }}
      />
      <PlaceFacts
        facts={[
          { label: 'Kind', value: machine.kind },
          { label: 'Use', value: machine.standby ? 'stands by' : 'in regular use' },
          { label: 'On average', value: machine.hoursPerDay, unit: 'h a day' },
        ]}
        change={
          may(machines.change) && { label: 'Change the machine', href: paths.changeRow(code, 'machines', machine.id) }
        }
      />
      <PartSection title="Shafts">
        <RegisterTable
          name="shafts"
          caption="Shafts"
          filter={ofMachine}
          columns={shaftColumns}
          rowHref={(row) => paths.place(code, 'shaft', row.id)}
          empty={<EmptyState heading="h3" title="No shaft is entered yet" text="A shaft carries the positions." />}
        />
      </PartSection>
      <PartSection title="Hour meter">
        <RegisterTable
          name="meters"
          caption="Hour meter"
          filter={ofMachine}
          columns={meterColumns}
          rowHref={(row) => paths.meter(code, row.id)}
          empty={
            <EmptyState
              heading="h3"
              title="No hour meter"
              text={`Run hours are estimated from ${machine.hoursPerDay} h a day, and marked so.`}
              action={
                may(meters.create) && (
                  <AppLink href={paths.enterRow(code, 'meters', machine.id)}>Enter an hour meter</AppLink>
                )
              }
            />
          }
        />
      </PartSection>
    </>
  )
}
