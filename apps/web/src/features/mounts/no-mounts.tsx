import { Button } from '@mantine/core'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { AppLink } from '../../ui/link.tsx'

/** A list of mounts with nothing in it. */
export function NoMounts({ filtered, onClear }: { filtered: boolean; onClear: () => void }) {
  const { code } = useSite()
  if (filtered)
    return (
      <EmptyState
        title="No mount matches"
        text="Take a filter away, or search by tag, machine, bearing or fitter."
        action={
          <Button variant="default" onClick={onClear}>
            Clear all filters
          </Button>
        }
      />
    )
  return (
    <EmptyState
      title="No mount is logged yet"
      text="Open a position and log the bearing that is fitted there."
      action={<AppLink href={paths.positions(code)}>Positions</AppLink>}
    />
  )
}
