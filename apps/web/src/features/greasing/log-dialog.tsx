import { Button } from '@mantine/core'
import { createGreasing } from '@shaftbook/contract/greasing'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { v7 as newId } from 'uuid'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { shownProblem } from '../../api/shown-problem.ts'
import { formatCount } from '../../lib/format-count.ts'
import { plantClock } from '../../lib/plant-time.ts'
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
  if (place.data) return <LogForm key={positionId} place={place.data} onClose={onClose} />
  return (
    <GreasingDialog title="Log a greasing" onClose={onClose}>
      {place.isError ? (
        <ErrorState problem={shownProblem(place.error)} onRetry={() => void place.refetch()} />
      ) : (
        <LoadingRows what="the position" rows={3} />
      )}
    </GreasingDialog>
  )
}

function LogForm({ place, onClose }: { place: PositionOverview; onClose: () => void }) {
  const { code, site } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const { position, plan, meter } = place
  const [id] = useState(() => newId())
  const [typed, setTyped] = useState(false)
  const { form, faults, show, showRefusal, clear } = useFaults<EntryFaults>()
  const [entry, setEntry] = useState<GreasingEntry>(() => ({
    greasedAt: plantClock(new Date(), site.timeZone),
    greaseId: '',
    doseG: plan ? String(plan.doseG) : '',
    meterShowsHours: '',
    note: '',
  }))
  const log = useMutation({
    mutationFn: () =>
      call(createGreasing, {
        params: { site: code },
        body: { id, positionId: position.id, ...entryBody(entry, site.timeZone) },
      }),
    onSuccess: async (greasing) => {
      await invalidateSite(client, code)
      const judged = greasing.windowResult === 'no-window' ? '' : `: ${windowWord(greasing.windowResult).toLowerCase()}`
      notice.done(`${greasing.doseG} g at ${position.tag} is logged${judged}.`)
      onClose()
    },
    onError: showRefusal,
  })
  const submit = (): void => {
    log.reset()
    if (!show(entryFaults(entry, { timeZone: site.timeZone, now: new Date(), needsGrease: plan === null })))
      log.mutate()
  }
  return (
    <GreasingDialog title={`Log greasing of ${position.tag}`} onClose={onClose} typed={typed}>
      <PlaceFacts place={place} />
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
            setTyped(true)
            setEntry({ ...entry, ...part })
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
        <Button variant="default" onClick={onClose}>
          Go back
        </Button>
        <Button onClick={submit} loading={log.isPending}>
          Log {entry.doseG.trim() === '' ? 'greasing' : `${entry.doseG.trim()} g`}
        </Button>
      </div>
    </GreasingDialog>
  )
}
