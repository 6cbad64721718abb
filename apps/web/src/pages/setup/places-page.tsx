import { areas } from '@shaftbook/contract/register-tables'
import { PartHead } from '../../features/setup/part-head.tsx'
import { areaColumns } from '../../features/setup/register-columns.tsx'
import { RegisterTable } from '../../features/setup/register-table.tsx'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'

/** The areas of the site: the way to its machines, shafts and positions. */
export function PlacesPage() {
  const { code, may } = useSite()
  return (
    <>
      <PartHead
        title="Areas"
        sentence="An area holds machines, a machine its shafts, a shaft its positions."
        act={may(areas.create) && { label: 'Enter an area', href: paths.enterRow(code, 'areas') }}
      />
      <RegisterTable
        name="areas"
        caption="Areas"
        columns={areaColumns}
        rowHref={(row) => paths.place(code, 'area', row.id)}
        empty={
          <EmptyState
            title="No area is entered yet"
            text="Begin here: an area first, then its machines, their shafts, and the positions on each shaft."
          />
        }
      />
    </>
  )
}
