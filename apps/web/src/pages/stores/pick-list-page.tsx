import { Button } from '@mantine/core'
import { useSuspenseQuery } from '@tanstack/react-query'
import { useParams } from '@tanstack/react-router'
import { PickList } from '../../features/stores/pick-list.tsx'
import { storesQueries } from '../../features/stores/stores-queries.ts'
import classes from '../../features/stores/stores.module.css'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import type { Definition } from '../../ui/definition-list.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PageHead } from '../../ui/page-head.tsx'

/** What goes on at a position: every line of its kit in the order of the bins, to be printed and picked. */
export function PickListPage() {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { code } = useSite()
  const { data: place } = useSuspenseQuery(storesQueries.place(code, id))
  const { position, shaft, machine, area, bearingType, kit } = place
  const facts: Definition[] = [
    { label: 'Bearing', value: bearingType.designation },
    {
      label: 'Shaft',
      value: position.shaftDiameterMm === null ? null : `${position.shaftDiameterMm} mm, ${position.shaftSystem}`,
    },
    { label: 'Housing', value: position.housingCode },
    { label: 'This end', value: position.locating ? 'locating' : 'non-locating' },
    { label: 'Kit', value: kit ? <AppLink href={paths.kit(code, kit.id)}>{kit.name}</AppLink> : 'none' },
  ]
  return (
    <>
      <PageHead
        title={`Kit for ${position.tag}`}
        sentence={`${machine.tag} ${machine.name}, ${shaft.name.toLowerCase()}, ${position.name.toLowerCase()}, ${area.name}.`}
        trail={[
          { label: 'Stores', href: paths.stores(code) },
          { label: position.tag, href: paths.position(code, id) },
        ]}
        actions={
          kit && (
            <Button className={classes.screen} variant="default" onClick={() => window.print()}>
              Print pick list
            </Button>
          )
        }
        facts={facts}
      />
      {kit ? (
        <>
          <PickList kit={kit} tag={position.tag} />
          {kit.note && <p className={classes.note}>{kit.note}</p>}
        </>
      ) : (
        <EmptyState
          title="No kit is named for this position"
          text="An engineer chooses the kit when editing the position; stores enter kits."
          action={<AppLink href={paths.kits(code)}>All kits</AppLink>}
        />
      )}
    </>
  )
}
