import { greases } from '@shaftbook/contract/register-tables'
import { PartHead } from '../../features/setup/part-head.tsx'
import { greaseColumns } from '../../features/setup/register-columns.tsx'
import { RegisterTable } from '../../features/setup/register-table.tsx'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'

/** The greases of the site. */
export function GreasesPage() {
  const { code, may } = useSite()
  const mayEnter = may(greases.create)
  return (
    <>
      <PartHead
        title="Greases"
        sentence="A grease plan names one of these; a greasing with another is refused or marked."
        act={mayEnter && { label: 'Enter a grease', href: paths.enterRow(code, 'greases') }}
      />
      <RegisterTable
        name="greases"
        caption="Greases"
        columns={greaseColumns}
        rowHref={mayEnter ? (row) => paths.changeRow(code, 'greases', row.id) : undefined}
        empty={<EmptyState title="No grease is entered yet" text="Enter each grease that is used at the site, once." />}
      />
    </>
  )
}
