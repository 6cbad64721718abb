import { countWalk, type Walk } from './walk-state.ts'
import classes from './walk.module.css'

/** How far the walk is: one mark a stop, with words. */
export function WalkProgress({ walk, onGo }: { walk: Walk; onGo: (at: number) => void }) {
  const { stops } = walk.round
  const { open } = countWalk(walk)
  return (
    <div className={classes.progress}>
      <p>
        <strong>
          Stop {walk.at + 1} of {stops.length}
        </strong>
        <span className={classes.soft}> · {open === 0 ? 'all signed' : `${open} open`}</span>
        <button type="button" className={classes.toSummary} onClick={() => onGo(stops.length)}>
          Summary
        </button>
      </p>
      <ol className={classes.marks} aria-hidden="true">
        {stops.map(({ id }, index) => (
          <li key={id} data-outcome={walk.entries[id]?.outcome ?? 'open'} data-here={index === walk.at || undefined} />
        ))}
      </ol>
    </div>
  )
}
