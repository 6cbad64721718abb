import { Button, Textarea } from '@mantine/core'
import { ThumbFoot } from '../../ui/thumb-foot.tsx'
import { outcomeWords, stopsText } from './round-words.ts'
import type { WalkWork } from './use-walk.ts'
import { countWalk, type Walk } from './walk-state.ts'
import classes from './walk.module.css'

/** What came of the walk, and what is left open. */
export function WalkSummary({ work, walk, onClose }: { work: WalkWork; walk: Walk; onClose: () => void }) {
  const count = countWalk(walk)
  const ended = walk.endedAt !== null
  const close = (): void => {
    work.forget()
    onClose()
  }
  return (
    <div className={classes.screen} data-guided>
      <h2 className={classes.tag}>{ended ? 'The round is ended' : 'Summary'}</h2>
      <p>
        {count.done} done, {count.checked} only looked at, {count.skipped} skipped, {count.open} left open.
      </p>
      {work.waiting > 0 && (
        <p className={classes.note}>
          {work.waiting === 1 ? '1 record is' : `${work.waiting} records are`} kept on this device and sent when there
          is a network.
        </p>
      )}
      <ul className={classes.results} aria-label="Stops of the round">
        {walk.round.stops.map((stop, index) => (
          <StopLine key={stop.id} work={work} walk={walk} index={index} />
        ))}
      </ul>
      {!ended && (
        <Textarea
          size="touch"
          label="Note on the round"
          autosize
          minRows={2}
          value={walk.note}
          onChange={(event) => work.keep({ ...walk, note: event.currentTarget.value })}
        />
      )}
      {work.trouble && (
        <p className={classes.failed} role="alert">
          {work.trouble}
        </p>
      )}
      <ThumbFoot>
        {!ended && (
          <Button
            size="touch"
            variant="default"
            onClick={() => work.keep({ ...walk, at: walk.round.stops.length - 1 })}
          >
            Back
          </Button>
        )}
        {ended ? (
          <Button size="touch" disabled={work.waiting > 0} onClick={close}>
            {work.waiting > 0 ? 'Kept until all is sent' : 'Close'}
          </Button>
        ) : (
          <Button size="touch" onClick={() => void work.end()}>
            {count.open === 0 ? 'End the round' : `End the round, ${stopsText(count.open)} left open`}
          </Button>
        )}
      </ThumbFoot>
    </div>
  )
}

function StopLine({ work, walk, index }: { work: WalkWork; walk: Walk; index: number }) {
  const stop = walk.round.stops[index]
  const entry = stop && walk.entries[stop.id]
  if (!entry) return null
  const refusal = work.refused.get(entry.id)
  const word = entry.outcome === null ? 'Left open' : outcomeWords[entry.outcome]
  return (
    <li data-outcome={refusal ? 'refused' : (entry.outcome ?? 'open')}>
      <button type="button" className={classes.result} onClick={() => work.keep({ ...walk, endedAt: null, at: index })}>
        <span className={classes.resultTag}>{stop.tag}</span>
        <span>
          {refusal ? 'Not taken into the book: put it right' : word}
          {entry.outcome === 'skipped' && `: ${entry.reason}`}
          {entry.doseG !== null && `, ${entry.doseG} g`}
        </span>
      </button>
    </li>
  )
}
