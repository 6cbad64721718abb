import { Button } from '@mantine/core'
import { createGreasing } from '@shaftbook/contract/greasing'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { useQuery } from '@tanstack/react-query'
import { Suspense, useState } from 'react'
import { v7 as newId } from 'uuid'
import { shownProblem } from '../../api/shown-problem.ts'
import { formatCount } from '../../lib/format-count.ts'
import { plantClock } from '../../lib/plant-time.ts'
import { useDraft } from '../../offline/use-draft.ts'
import { useOutboxSend, waitingSentence } from '../../offline/use-outbox-send.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { Caution } from '../../ui/caution.tsx'
import { ErrorState } from '../../ui/error-state.tsx'
import { LoadingRows } from '../../ui/loading-rows.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { EntryFields } from './entry-fields.tsx'
import { entryBody, entryFaults, type EntryFaults, type GreasingEntry } from './greasing-entry.ts'
import { GreasingDialog } from './greasing-dialog.tsx'
import { placeQuery } from './greasing-queries.ts'
import { PlaceFacts } from './place-facts.tsx'
import { windowWord } from './window-mark.tsx'
import { useFaults } from './use-faults.ts'
import classes from './greasing-dialog.module.css'

interface LogDialogProps {
  positionId: string
  onClose: () => void
}

/** Logs a greasing: the plan's dose, now, one tap. */
export function LogDialog({ positionId, onClose }: LogDialogProps) {
  const { code } = useSite()
  const place = useQuery(placeQuery(code, positionId))
  const opening = (
    <GreasingDialog title="Log a greasing" onClose={onClose}>
      <LoadingRows what="the position" rows={3} />
    </GreasingDialog>
  )
  if (place.data)
    return (
      <Suspense fallback={opening}>
        <LogForm key={positionId} place={place.data} onClose={onClose} />
      </Suspense>
    )
  if (!place.isError) return opening
  return (
    <GreasingDialog title="Log a greasing" onClose={onClose}>
      <ErrorState problem={shownProblem(place.error)} onRetry={() => void place.refetch()} />
    </GreasingDialog>
  )
}

/** What is kept of a greasing that is being logged: with its id, so that a second sending is the same request. */
interface Draft {
  id: string
  entry: GreasingEntry
}

function LogForm({ place, onClose }: { place: PositionOverview; onClose: () => void }) {
  const { code, me, site } = useSite()
  const notice = useNotice()
  const { position, plan, meter } = place
  const subject = `greasing/${position.id}`
  const about = { title: `Greasing of ${position.tag}`, address: paths.logGreasing(code, position.id) }
  const draft = useDraft<Draft>({ personId: me.id, site: code, subject }, about)
  const [id] = useState(() => draft.found?.id ?? newId())
  const [typed, setTyped] = useState(draft.found !== null)
  const { form, faults, show, showRefusal, clear } = useFaults<EntryFaults>()
  const [entry, setEntry] = useState<GreasingEntry>(() => ({
    greasedAt: plantClock(new Date(), site.timeZone),
    greaseId: '',
    doseG: plan ? String(plan.doseG) : '',
    meterShowsHours: '',
    note: '',
    ...draft.found?.entry,
  }))
  const close = (): void => {
    draft.forget()
    onClose()
  }
  const log = useOutboxSend<typeof createGreasing>({
    onTaken: (taken) => {
      if (taken.state === 'waiting') {
        notice.done(waitingSentence(about.title, taken.why))
      } else {
        const { doseG, windowResult } = taken.reply
        const judged = windowResult === 'no-window' ? '' : `: ${windowWord(windowResult).toLowerCase()}`
        notice.done(`${doseG} g at ${position.tag} is logged${judged}.`)
      }
      onClose()
    },
    onRefused: showRefusal,
  })
  const send = (): void => {
    log.mutate({
      kind: 'greasing',
      site: code,
      positionId: position.id,
      subjectText: about.title,
      address: about.address,
      endpoint: createGreasing,
      input: { params: { site: code }, body: { id, positionId: position.id, ...entryBody(entry, site.timeZone) } },
      typed: { subject, ...about, value: { id, entry } satisfies Draft },
    })
  }
  const submit = (): void => {
    log.reset()
    if (!show(entryFaults(entry, { timeZone: site.timeZone, now: new Date(), needsGrease: plan === null }))) send()
  }
  return (
    <GreasingDialog title={`Log greasing of ${position.tag}`} onClose={close} typed={typed}>
      <PlaceFacts place={place} />
      {draft.found && <p>What was typed here before is back.</p>}
      <Caution title="Rotating parts, and grease under pressure">
        Keep hands and sleeves away from the shaft; a guard stays on. Grease from a gun goes through skin: never hold a
        finger to the fitting, and see a doctor at once if it happened. Open the outlet; never fill a housing to the
        top.
      </Caution>
      <div ref={form} className={classes.body}>
        <EntryFields
          entry={entry}
          faults={faults}
          plannedG={plan?.doseG ?? null}
          meterName={meter?.name ?? null}
          meterHint={
            meter?.lastTotalHours == null ? undefined : `Last known: ${formatCount(meter.lastTotalHours)} run hours`
          }
          asksGrease={plan === null}
          onChange={(part) => {
            const next = { ...entry, ...part }
            setTyped(true)
            setEntry(next)
            draft.keep({ id, entry: next })
            clear()
          }}
        />
      </div>
      {log.isError && (
        <p className={classes.failed} role="alert">
          {log.error.message}
        </p>
      )}
      <div className={classes.acts}>
        <Button variant="default" onClick={close}>
          Go back
        </Button>
        <Button onClick={submit} loading={log.isPending}>
          Log {entry.doseG.trim() === '' ? 'greasing' : `${entry.doseG.trim()} g`}
        </Button>
      </div>
    </GreasingDialog>
  )
}
