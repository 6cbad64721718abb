import { Button, Textarea } from '@mantine/core'
import { skipReasons } from './round-words.ts'
import type { StopEntry } from './walk-state.ts'
import classes from './walk.module.css'

interface SkipStopProps {
  entry: StopEntry
  fault: string | undefined
  onChange: (part: Partial<StopEntry>) => void
  onSkip: () => void
  onStay: () => void
}

/** Skips the stop, with a reason. */
export function SkipStop({ entry, fault, onChange, onSkip, onStay }: SkipStopProps) {
  return (
    <section className={classes.question} aria-label="Skip this stop">
      <div className={classes.reasons}>
        {skipReasons.map((reason) => (
          <Button
            key={reason}
            size="touch"
            variant={entry.reason === reason ? 'filled' : 'default'}
            aria-pressed={entry.reason === reason}
            onClick={() => onChange({ reason })}
          >
            {reason}
          </Button>
        ))}
      </div>
      <Textarea
        size="touch"
        name="reason"
        label="Why it is skipped"
        autosize
        minRows={1}
        value={entry.reason}
        error={fault}
        onChange={(event) => onChange({ reason: event.currentTarget.value })}
      />
      <div className={classes.acts}>
        <Button size="touch" onClick={onSkip}>
          Skip, next
        </Button>
        <Button size="touch" variant="default" onClick={onStay}>
          Do not skip
        </Button>
      </div>
    </section>
  )
}
