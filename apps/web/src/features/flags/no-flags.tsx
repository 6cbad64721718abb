import { Button } from '@mantine/core'
import { EmptyState } from '../../ui/empty-state.tsx'
import type { FlagState } from './flag-queries.ts'

interface NoFlagsProps {
  state: FlagState
  filtered: boolean
  onClear: () => void
}

const words: Record<FlagState, { title: string; text: string }> = {
  open: {
    title: 'No open flags',
    text: 'Good: by what is written in this book, every greasing is in time and every mount on record finished as it must. It knows only what was logged.',
  },
  'put-off': {
    title: 'No flag is put off',
    text: 'A flag that has to wait is put off with a reason and a day. It then stands here until it comes back.',
  },
  cleared: {
    title: 'No flag was cleared yet',
    text: 'When a greasing, a remount or a change of the register clears a flag, it is kept here.',
  },
}

/** An empty flag list: good news, or filters that leave nothing. */
export function NoFlags({ state, filtered, onClear }: NoFlagsProps) {
  if (filtered)
    return (
      <EmptyState
        title="No flag matches"
        text="There may be flags in another area or of another kind."
        action={
          <Button variant="default" onClick={onClear}>
            Show all flags
          </Button>
        }
      />
    )
  return <EmptyState {...words[state]} />
}
