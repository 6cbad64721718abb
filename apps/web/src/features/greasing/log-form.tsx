import { Button } from '@mantine/core'
import type { GreaseTask } from '@shaftbook/contract/grease-plans'
import { createGreasing, takesGrease, type Greasing } from '@shaftbook/contract/greasing'
import { createObservation } from '@shaftbook/contract/observations'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { v7 as newId } from 'uuid'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { formatCount } from '../../lib/format-count.ts'
import { plantClock, plantInstant } from '../../lib/plant-time.ts'
import { queueWrite } from '../../offline/outbox.ts'
import { useDraft } from '../../offline/use-draft.ts'
import { useOutboxSend, waitingSentence } from '../../offline/use-outbox-send.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { Caution } from '../../ui/caution.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { EntryFields } from './entry-fields.tsx'
import { entryBody, entryFaults, type EntryFaults, type GreasingEntry } from './greasing-entry.ts'
import { GreasingDialog } from './greasing-dialog.tsx'
import { PlaceFacts } from './place-facts.tsx'
import { nothingSeen, seenBody, seenFaults, type SeenEntry, type SeenFaults } from './seen-entry.ts'
import { SeenFields } from './seen-fields.tsx'
import { subjectOf, taskActs, taskDangers } from './task-acts.ts'
import { windowWord } from './window-mark.tsx'
import { useFaults } from './use-faults.ts'
import classes from './greasing-dialog.module.css'

/** What is kept of work that is being logged: with its id, so that a second sending is the same request. */
interface Draft {
  id: string
  entry: GreasingEntry
  seen?: SeenEntry
  observationId?: string
}

interface LogFormProps {
  place: PositionOverview
  task: GreaseTask
  onClose: () => void
}

export function LogForm({ place, task, onClose }: LogFormProps) {
  const { code, me, may, site } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const { position, meter } = place
  const plan = place.plans.find((each) => each.task === task) ?? null
  const greased = takesGrease(task)
  const { log: logWord } = taskActs[task]
  const subject = task === 'regrease' ? `greasing/${position.id}` : `greasing/${position.id}/${task}`
  const about = { title: subjectOf(task, position.tag), address: paths.logGreasing(code, position.id, task) }
  const draft = useDraft<Draft>({ personId: me.id, site: code, subject }, about)
  const [id] = useState(() => draft.found?.id ?? newId())
  const [observationId] = useState(() => draft.found?.observationId ?? newId())
  const [typed, setTyped] = useState(draft.found !== null)
  const { form, faults, show, showRefusal, clear } = useFaults<EntryFaults & SeenFaults>()
  const [entry, setEntry] = useState<GreasingEntry>(() => ({
    greasedAt: plantClock(new Date(), site.timeZone),
    greaseId: '',
    doseG: plan?.doseG == null ? '' : String(plan.doseG),
    meterShowsHours: '',
    finding: '',
    note: '',
    ...draft.found?.entry,
  }))
  const [seen, setSeen] = useState<SeenEntry>(() => draft.found?.seen ?? nothingSeen)
  const keep = (part: Partial<Draft>): void => {
    setTyped(true)
    draft.keep({ id, entry, seen, observationId, ...part })
    clear()
  }
  const close = (): void => {
    draft.forget()
    onClose()
  }
  const log = useOutboxSend<typeof createGreasing>({
    onTaken: async (taken) => {
      await noteSeen()
      notice.done(taken.state === 'waiting' ? waitingSentence(about.title, taken.why) : loggedSentence(taken.reply))
      onClose()
    },
    onRefused: showRefusal,
  })
  /** What was noticed goes after the work that it was noticed at. */
  const noteSeen = async (): Promise<void> => {
    const observedAt = plantInstant(entry.greasedAt, site.timeZone) ?? new Date().toISOString()
    const body = seenBody(seen, { id: observationId, positionId: position.id, greasingId: id, observedAt })
    if (!body) return
    const { outcome } = await queueWrite({
      kind: 'observation',
      site: code,
      positionId: position.id,
      subjectText: `Observation at ${position.tag}`,
      address: paths.position(code, position.id),
      endpoint: createObservation,
      input: { params: { site: code }, body },
    })
    const refreshOnceSent = async (): Promise<void> => {
      const end = await outcome
      if (end.state === 'sent') await invalidateSite(client, code)
    }
    void refreshOnceSent()
  }
  const send = (): void => {
    const body = { id, positionId: position.id, task, ...entryBody(entry, { task, timeZone: site.timeZone }) }
    log.mutate({
      kind: 'greasing',
      site: code,
      positionId: position.id,
      subjectText: about.title,
      address: about.address,
      endpoint: createGreasing,
      input: { params: { site: code }, body },
      typed: { subject, ...about, value: { id, entry, seen, observationId } satisfies Draft },
    })
  }
  const submit = (): void => {
    log.reset()
    const asked = { task, timeZone: site.timeZone, now: new Date(), needsGrease: plan === null }
    if (!show({ ...entryFaults(entry, asked), ...seenFaults(seen) })) send()
  }
  const dose = entry.doseG.trim()
  return (
    <GreasingDialog title={`${logWord} of ${position.tag}`} onClose={close} typed={typed}>
      <PlaceFacts place={place} task={task} />
      {draft.found && <p>What was typed here before is back.</p>}
      <Caution title={taskDangers[task].title}>{taskDangers[task].text}</Caution>
      <div ref={form} className={classes.body}>
        <EntryFields
          task={task}
          entry={entry}
          faults={faults}
          plannedG={plan?.doseG ?? null}
          meterName={meter?.name ?? null}
          meterHint={
            meter?.lastTotalHours == null ? undefined : `Last known: ${formatCount(meter.lastTotalHours)} run hours`
          }
          asksGrease={plan === null}
          asksFinding
          onChange={(part) => {
            const next = { ...entry, ...part }
            setEntry(next)
            keep({ entry: next })
          }}
        />
        {may(createObservation) && (
          <SeenFields
            entry={seen}
            faults={faults}
            onChange={(part) => {
              const next = { ...seen, ...part }
              setSeen(next)
              keep({ seen: next })
            }}
          />
        )}
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
          {greased && dose !== '' ? `Log ${dose} g` : logWord}
        </Button>
      </div>
    </GreasingDialog>
  )
}

function loggedSentence({ doseG, task, tag, windowResult }: Greasing): string {
  const what = doseG === null ? subjectOf(task, tag) : `${doseG} g at ${tag}`
  const judged = windowResult === 'no-window' ? '' : `: ${windowWord(windowResult).toLowerCase()}`
  return `${what} is logged${judged}.`
}
