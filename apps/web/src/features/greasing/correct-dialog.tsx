import { Button, Checkbox, Textarea } from '@mantine/core'
import { correctGreasing, type Greasing } from '@shaftbook/contract/greasing'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { v7 as newId } from 'uuid'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { plantClock } from '../../lib/plant-time.ts'
import { useSite } from '../../session/site-access.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { EntryFields } from './entry-fields.tsx'
import { entryBody, entryFaults, type EntryFaults, type GreasingEntry } from './greasing-entry.ts'
import { GreasingDialog } from './greasing-dialog.tsx'
import { placeQuery } from './greasing-queries.ts'
import { subjectOf } from './task-acts.ts'
import { useFaults } from './use-faults.ts'
import classes from './greasing-dialog.module.css'

/** Corrects or withdraws a signed greasing by a further record. */
export function CorrectDialog({ greasing, onClose }: { greasing: Greasing; onClose: () => void }) {
  const { code, site } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const place = useQuery(placeQuery(code, greasing.positionId))
  const [id] = useState(() => newId())
  const [withdrawn, setWithdrawn] = useState(false)
  const [reason, setReason] = useState('')
  const { form, faults, show, showRefusal, clear } = useFaults<EntryFaults>()
  const [entry, setEntry] = useState<GreasingEntry>(() => ({
    greasedAt: plantClock(new Date(greasing.greasedAt), site.timeZone),
    greaseId: greasing.planId === null ? (greasing.greaseId ?? '') : '',
    doseG: greasing.doseG === null ? '' : String(greasing.doseG),
    meterShowsHours: '',
    finding: '',
    note: greasing.note,
  }))
  const correct = useMutation({
    mutationFn: () =>
      call(correctGreasing, {
        params: { site: code, id: greasing.id },
        body: {
          id,
          correctionReason: reason.trim(),
          withdrawn,
          ...entryBody(entry, { task: greasing.task, timeZone: site.timeZone }),
        },
      }),
    onSuccess: async () => {
      await invalidateSite(client, code)
      notice.done(`${subjectOf(greasing.task, greasing.tag)} is ${withdrawn ? 'withdrawn' : 'corrected'}.`)
      onClose()
    },
    onError: showRefusal,
  })
  const submit = (): void => {
    correct.reset()
    const { task } = greasing
    const about = { task, timeZone: site.timeZone, now: new Date(), needsGrease: false, corrects: true }
    const found = withdrawn ? {} : entryFaults(entry, about)
    if (reason.trim().length < 3) found.correctionReason = 'Say what was wrong and how you know.'
    if (!show(found)) correct.mutate()
  }
  return (
    <GreasingDialog title={`Correct: ${subjectOf(greasing.task, greasing.tag)}`} onClose={onClose} typed>
      <p>
        The record of {greasing.signedBy} stays readable; this further one counts. Due date and flags follow at once.
      </p>
      <div ref={form} className={classes.body}>
        <Checkbox
          size="md"
          className={classes.check}
          label="It did not happen at this position: withdraw it"
          checked={withdrawn}
          onChange={(event) => setWithdrawn(event.currentTarget.checked)}
        />
        {!withdrawn && (
          <EntryFields
            task={greasing.task}
            entry={entry}
            faults={faults}
            plannedG={greasing.plannedDoseG}
            meterName={place.data?.meter?.name ?? null}
            meterHint="Empty: the hours follow from the other readings"
            asksGrease={greasing.planId === null}
            asksFinding={false}
            onChange={(part) => {
              setEntry({ ...entry, ...part })
              clear()
            }}
          />
        )}
        <Textarea
          size="touch"
          label="What was wrong, and how do you know?"
          required
          autosize
          minRows={2}
          value={reason}
          error={faults.correctionReason}
          onChange={(event) => setReason(event.currentTarget.value)}
        />
      </div>
      {correct.isError && (
        <p className={classes.failed} role="alert">
          {correct.error.message}
        </p>
      )}
      <div className={classes.acts}>
        <Button variant="default" onClick={onClose}>
          Go back
        </Button>
        <Button onClick={submit} loading={correct.isPending} color={withdrawn ? 'over' : 'accent'}>
          {withdrawn ? 'Withdraw' : 'Sign the correction'}
        </Button>
      </div>
    </GreasingDialog>
  )
}
