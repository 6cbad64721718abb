import { Button } from '@mantine/core'
import { createGreasing } from '@shaftbook/contract/greasing'
import { createMountPlan } from '@shaftbook/contract/mount-plans'
import { createMount } from '@shaftbook/contract/mounts'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { positions } from '@shaftbook/contract/register-tables'
import { createRemoval } from '@shaftbook/contract/removals'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'

/** What a person of this role may do at a position. */
export function PositionActions({ place }: { place: PositionOverview }) {
  const { code, may } = useSite()
  const { position, fitment, plan } = place
  const retired = position.retiredAt !== null
  return (
    <>
      {may(positions.change) && (
        <Button component={AppLink} href={paths.changeRow(code, 'positions', position.id)} variant="subtle">
          Edit position
        </Button>
      )}
      {may(createMountPlan) && !retired && (
        <Button component={AppLink} href={paths.planMount(code, position.id)} variant="subtle">
          Plan a mount
        </Button>
      )}
      {may(createGreasing) && plan && fitment && !retired && (
        <Button component={AppLink} href={paths.logGreasing(code, position.id)} variant="default">
          Log greasing
        </Button>
      )}
      {may(createRemoval) && fitment && (
        <Button component={AppLink} href={paths.remove(code, position.id)} variant="default">
          Log removal
        </Button>
      )}
      {may(createMount) && !retired && (
        <Button component={AppLink} href={paths.remount(code, position.id)}>
          {fitment ? 'Log remount' : 'Log mount'}
        </Button>
      )}
    </>
  )
}
