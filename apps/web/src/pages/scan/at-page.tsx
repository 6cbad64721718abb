import { Button } from '@mantine/core'
import { createGreasing } from '@shaftbook/contract/greasing'
import { createMount } from '@shaftbook/contract/mounts'
import { useSuspenseQuery } from '@tanstack/react-query'
import { useParams } from '@tanstack/react-router'
import { scanQueries } from '../../features/scan/scan-queries.ts'
import classes from '../../features/scan/scan.module.css'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { DueMark } from '../../ui/due-mark.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { PageTitle } from '../../ui/page-title.tsx'

/** Where the label on a machine leads: the position, and what is done there. */
export function AtPage() {
  const { position: reference = '' }: { position?: string } = useParams({ strict: false })
  const { code, site } = useSite()
  const { data: found } = useSuspenseQuery(scanQueries.position(code, reference))
  if (found) return <Here id={found.id} />
  return (
    <>
      <PageTitle title="No such position" />
      <EmptyState
        heading="h1"
        title={`No position of ${site.siteName} is called ${reference}`}
        text="The label may be of an old tag. Look for the machine, or scan again."
        action={
          <>
            <AppLink href={paths.scan(code)}>Scan a label</AppLink>
            {' · '}
            <AppLink href={`${paths.positions(code)}?q=${encodeURIComponent(reference)}`}>Search the positions</AppLink>
          </>
        }
      />
    </>
  )
}

function Here({ id }: { id: string }) {
  const { code, may } = useSite()
  const { data: place } = useSuspenseQuery(scanQueries.overview(code, id))
  const { position, shaft, machine, fitment, plan, due } = place
  const inService = position.retiredAt === null
  return (
    <>
      <PageHead
        title={position.tag}
        sentence={`${position.name}, ${shaft.name.toLowerCase()} of ${machine.name} ${machine.tag}.`}
        trail={[{ label: 'Scan a label', href: paths.scan(code) }]}
        facts={[
          { label: 'Fitted now', value: fitment ? fitment.designation : 'nothing' },
          ...(due ? [{ label: 'Greasing', value: <DueMark state={due.state} /> }] : []),
          ...(place.flags.length > 0 ? [{ label: 'Open flags', value: String(place.flags.length) }] : []),
        ]}
      />
      {!inService && <p>This position is retired: it keeps its history and takes no more bearings.</p>}
      <div className={classes.acts}>
        {may(createMount) && inService && (
          <Button component={AppLink} href={paths.remount(code, id)} size="touch">
            Start a mount
          </Button>
        )}
        {may(createGreasing) && plan && fitment && inService && (
          <Button component={AppLink} href={paths.logGreasing(code, id)} size="touch" variant="default">
            Log a greasing
          </Button>
        )}
        <Button component={AppLink} href={paths.position(code, id)} size="touch" variant="default">
          Open the position
        </Button>
      </div>
    </>
  )
}
