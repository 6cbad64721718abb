import { putOffFlag, type Flag } from '@shaftbook/contract/flags'
import { Button, Textarea, TextInput } from '@mantine/core'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useRef, useState } from 'react'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { ProblemError } from '../../api/problem-error.ts'
import { addDays, formatDay } from '../../lib/format-day.ts'
import { useToday } from '../../lib/use-today.ts'
import { useSite } from '../../session/site-access.tsx'
import { Confirm } from '../../ui/confirm.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { flagKinds } from './flag-kinds.ts'
import classes from './put-off-dialog.module.css'

const spans = [
  { label: '1 week', days: 7 },
  { label: '4 weeks', days: 28 },
  { label: '3 months', days: 91 },
] as const

/** Puts a flag off until a day, with the reason. */
export function PutOffDialog({ flag, onClose }: { flag: Flag; onClose: () => void }) {
  const { code, site } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const today = useToday(site.timeZone)
  const [until, setUntil] = useState(flag.putOffUntil ?? '')
  const [reason, setReason] = useState(flag.putOffReason ?? '')
  const [tried, setTried] = useState(false)
  const untilField = useRef<HTMLInputElement>(null)
  const reasonField = useRef<HTMLTextAreaElement>(null)
  const faults = {
    until: until > today ? undefined : 'Choose a day after today; the flag comes back then',
    reason: reason.trim().length >= 3 ? undefined : 'Give the reason in a few words',
  }
  const putOff = useMutation({
    mutationFn: () =>
      call(putOffFlag, { params: { site: code, id: flag.id }, version: flag.version, body: { until, reason } }),
    onSuccess: async () => {
      await invalidateSite(client, code)
      notice.done(`Put off until ${formatDay(until)}. It comes back then.`)
      onClose()
    },
  })
  const refused = (field: string) =>
    putOff.error instanceof ProblemError ? putOff.error.faultsAt(field)[0]?.message : undefined
  const submit = () => {
    setTried(true)
    if (faults.until) untilField.current?.focus()
    else if (faults.reason) reasonField.current?.focus()
    else putOff.mutate()
  }
  return (
    <Confirm
      opened
      title="Put this flag off?"
      confirmLabel="Put off"
      busy={putOff.isPending}
      onConfirm={submit}
      onCancel={onClose}
    >
      <div className={classes.fields}>
        <p>
          {flagKinds[flag.kind].title} at {flag.tag ?? `${flag.machineTag}, ${flag.shaftName}`}. What is wrong there
          stays wrong; the flag only waits, and comes back on the day.
        </p>
        <div>
          <TextInput
            ref={untilField}
            type="date"
            label="Until"
            required
            min={addDays(today, 1)}
            value={until}
            error={(tried ? faults.until : undefined) ?? refused('until')}
            onChange={(event) => setUntil(event.currentTarget.value)}
            data-autofocus
          />
          <div className={classes.spans}>
            {spans.map(({ label, days }) => (
              <Button key={label} size="compact-sm" variant="default" onClick={() => setUntil(addDays(today, days))}>
                {label}
              </Button>
            ))}
          </div>
        </div>
        <Textarea
          ref={reasonField}
          label="Reason"
          description="Shown to everyone beside the flag"
          required
          rows={2}
          value={reason}
          error={(tried ? faults.reason : undefined) ?? refused('reason')}
          onChange={(event) => setReason(event.currentTarget.value)}
        />
        {putOff.isError && (
          <p className={classes.failed} role="alert">
            {putOff.error.message}
          </p>
        )}
      </div>
    </Confirm>
  )
}
