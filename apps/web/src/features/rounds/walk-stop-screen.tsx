import { Button } from '@mantine/core'
import { takesGrease } from '@shaftbook/contract/greasing'
import type { StopOutcome } from '@shaftbook/contract/round-walks'
import type { RoundStop } from '@shaftbook/contract/rounds'
import { useEffect, useRef, useState } from 'react'
import { DueMark } from '../../ui/due-mark.tsx'
import { ThumbFoot } from '../../ui/thumb-foot.tsx'
import type { SiteGrease } from './gun-choices.ts'
import { taskWords } from './round-words.ts'
import { SkipStop } from './skip-stop.tsx'
import { StopDose } from './stop-dose.tsx'
import { StopSeen } from './stop-seen.tsx'
import { StopSigned } from './stop-signed.tsx'
import type { WalkWork } from './use-walk.ts'
import { isWrongGun, stopFaults, type StopEntry, type StopFaults, type Walk } from './walk-state.ts'
import { plannedStrokes } from './stop-strokes.ts'
import { WalkProgress } from './walk-progress.tsx'
import classes from './walk.module.css'

interface WalkStopScreenProps {
  work: WalkWork
  walk: Walk
  stop: RoundStop
  greases: readonly SiteGrease[]
}

/** One stop: what and where, what goes in, what was seen. */
export function WalkStopScreen({ work, walk, stop, greases }: WalkStopScreenProps) {
  const { gun } = work
  const form = useRef<HTMLDivElement>(null)
  const heading = useRef<HTMLHeadingElement>(null)
  const [faults, setFaults] = useState<StopFaults>({})
  const [skipping, setSkipping] = useState(false)
  const entry = withPlannedDose(walk.entries[stop.id] as StopEntry, stop, gun?.gramsPerStroke)
  useEffect(() => heading.current?.focus(), [])
  const change = (part: Partial<StopEntry>): void =>
    work.keep({ ...walk, entries: { ...walk.entries, [stop.id]: { ...entry, ...part } } })
  const go = (at: number): void => work.keep({ ...walk, at })
  const sign = (outcome: StopOutcome): void => {
    const found = stopFaults(stop, entry, gun, outcome)
    setFaults(found)
    const [first] = Object.keys(found)
    if (first) form.current?.querySelector<HTMLElement>(`[name="${first}"]`)?.focus()
    else void work.sign(stop, entry, gun, outcome)
  }
  const wrong = isWrongGun(stop, gun)
  const signed = entry.outcome !== null
  return (
    <div ref={form} className={classes.screen} data-guided>
      <WalkProgress walk={walk} onGo={go} />
      <header className={classes.place}>
        <h2 ref={heading} tabIndex={-1} className={classes.tag}>
          {stop.tag}
        </h2>
        {stop.dueState && <DueMark state={stop.dueState} />}
        <p className={classes.where}>
          {stop.positionName}, {stop.machineName} ({stop.machineTag}), {stop.areaName}
        </p>
        <p className={classes.task}>{taskWords[stop.task]}</p>
      </header>
      {signed ? (
        <StopSigned
          stop={stop}
          entry={entry}
          refusal={work.refused.get(entry.id)}
          onMend={() => void work.mend(stop, entry)}
        />
      ) : (
        <>
          {takesGrease(stop.task) && (
            <StopDose
              stop={stop}
              entry={entry}
              walk={walk}
              work={work}
              greases={greases}
              faults={faults}
              onChange={change}
            />
          )}
          <StopSeen entry={entry} faults={faults} onChange={change} greased={takesGrease(stop.task)} />
          {skipping ? (
            <SkipStop
              entry={entry}
              fault={faults.reason}
              onChange={change}
              onSkip={() => sign('skipped')}
              onStay={() => setSkipping(false)}
            />
          ) : (
            <div className={classes.acts}>
              <Button size="touch" variant="default" onClick={() => setSkipping(true)}>
                Skip this stop
              </Button>
              {takesGrease(stop.task) && (
                <Button size="touch" variant="default" onClick={() => sign('checked')}>
                  Only looked at
                </Button>
              )}
            </div>
          )}
        </>
      )}
      {work.trouble && (
        <p className={classes.failed} role="alert">
          {work.trouble}
        </p>
      )}
      <ThumbFoot>
        {walk.at > 0 && (
          <Button size="touch" variant="default" onClick={() => go(walk.at - 1)}>
            Back
          </Button>
        )}
        {signed || wrong ? (
          <Button size="touch" variant={signed ? 'filled' : 'default'} onClick={() => go(walk.at + 1)}>
            {signed ? 'Next' : 'Leave it open, next'}
          </Button>
        ) : (
          <Button size="touch" onClick={() => sign('done')}>
            Done, next
          </Button>
        )}
      </ThumbFoot>
    </div>
  )
}

/** What the plan asks for stands in the field before anything is typed. */
function withPlannedDose(entry: StopEntry, stop: RoundStop, gramsPerStroke: number | undefined): StopEntry {
  if (entry.outcome !== null || stop.doseG === null) return entry
  const strokes = gramsPerStroke === undefined ? null : plannedStrokes(stop.doseG, gramsPerStroke)
  return {
    ...entry,
    strokes: entry.strokes === '' && strokes !== null ? String(strokes) : entry.strokes,
    grams: entry.grams === '' ? String(stop.doseG) : entry.grams,
  }
}
