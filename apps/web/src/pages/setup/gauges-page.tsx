import { gauges } from '@shaftbook/contract/register-tables'
import { useMemo } from 'react'
import { PartHead } from '../../features/setup/part-head.tsx'
import { gaugeColumns } from '../../features/setup/register-columns.tsx'
import { RegisterTable } from '../../features/setup/register-table.tsx'
import { useToday } from '../../lib/use-today.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'

/** The blade sets of the site. */
export function GaugesPage() {
  const { code, site, may } = useSite()
  const today = useToday(site.timeZone)
  const columns = useMemo(() => gaugeColumns(today), [today])
  const mayEnter = may(gauges.create)
  return (
    <>
      <PartHead
        title="Gauges"
        sentence="Blade sets by name. A mount sheet names the one that was used, and offers only stacks that its blades make."
        act={mayEnter && { label: 'Enter a gauge', href: paths.enterRow(code, 'gauges') }}
      />
      <RegisterTable
        name="gauges"
        caption="Gauges"
        columns={columns}
        rowHref={mayEnter ? (row) => paths.changeRow(code, 'gauges', row.id) : undefined}
        empty={
          <EmptyState
            title="No gauge is entered yet"
            text="Enter each blade set that is used at the site, with the blades that are really in it."
          />
        }
      />
    </>
  )
}
