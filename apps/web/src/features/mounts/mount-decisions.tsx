import { Button, Textarea, TextInput } from '@mantine/core'
import { needsReason } from '@shaftbook/contract/judge-mount'
import type { MountDecision, NewMountDecision } from '@shaftbook/contract/mount-decisions'
import { decideMount, type MountRecord } from '@shaftbook/contract/mounts'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useRef, useState, type FormEvent } from 'react'
import { v7 as newId } from 'uuid'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { ProblemError } from '../../api/problem-error.ts'
import { addDays, formatDay } from '../../lib/format-day.ts'
import { LeaveGuard } from '../../lib/leave-guard.tsx'
import { useToday } from '../../lib/use-today.ts'
import { useSite } from '../../session/site-access.tsx'
import { ChoiceField, type Choice } from '../../ui/choice-field.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import classes from './mount-decisions.module.css'

/** What the engineer decided on a mount that is not proven inside its limits, and the form to decide. The verdict stays. */
export function MountDecisions({ record }: { record: MountRecord }) {
  const { may } = useSite()
  const [deciding, setDeciding] = useState(false)
  const { decisions } = record
  const open = record.signedAt !== null && record.correctedById === null && needsReason(record.judgement)
  if (!open && decisions.length === 0) return null
  return (
    <PagePart title="The engineer's decision">
      <div className={classes.part}>
        {decisions.length === 0 && (
          <p className={classes.soft}>
            Nothing is decided yet. Such a mount is accepted until a day, or done again; its verdict stays either way.
          </p>
        )}
        {decisions.length > 0 && (
          <ol className={classes.list} aria-label="Decisions, newest first">
            {decisions.map((decision) => (
              <Decision key={decision.id} decision={decision} />
            ))}
          </ol>
        )}
        {open && may(decideMount) && !deciding && (
          <div>
            <Button variant={decisions.length === 0 ? 'filled' : 'default'} onClick={() => setDeciding(true)}>
              {decisions.length === 0 ? 'Decide on this mount' : 'Decide anew'}
            </Button>
          </div>
        )}
        {open && may(decideMount) && deciding && <DecideForm record={record} onClose={() => setDeciding(false)} />}
        {open && decisions.length === 0 && !may(decideMount) && (
          <p className={classes.soft}>An engineer or a manager decides.</p>
        )}
      </div>
    </PagePart>
  )
}

function Decision({ decision }: { decision: MountDecision }) {
  const { site } = useSite()
  const { kind, until, reason, decidedAt, decidedBy } = decision
  return (
    <li>
      <p className={classes.outcome}>
        {kind === 'accept-until' && until !== null ? `Accepted until ${formatDay(until)}` : 'To be done again'}
      </p>
      <p>{reason}</p>
      <p className={classes.soft}>
        {decidedBy}, <Timestamp at={decidedAt} timeZone={site.timeZone} relative={false} />
      </p>
    </li>
  )
}

type Kind = NewMountDecision['kind']

const kinds: readonly Choice<Kind>[] = [
  { value: 'accept-until', label: 'Accept until a day', hint: 'Its flags wait and come back then' },
  { value: 'do-again', label: 'Do again', hint: 'Its flags stay until the mount is done again' },
]

function DecideForm({ record, onClose }: { record: MountRecord; onClose: () => void }) {
  const { code, site } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const today = useToday(site.timeZone)
  const [id] = useState(() => newId())
  const [kind, setKind] = useState<Kind | ''>('')
  const [until, setUntil] = useState('')
  const [reason, setReason] = useState('')
  const [tried, setTried] = useState(false)
  const form = useRef<HTMLFormElement>(null)
  const untilField = useRef<HTMLInputElement>(null)
  const reasonField = useRef<HTMLTextAreaElement>(null)
  const accepts = kind === 'accept-until'
  const faults = {
    kind: kind === '' ? 'Choose one' : undefined,
    until: !accepts || until > today ? undefined : 'Choose a day after today; its flags come back then',
    reason: reason.trim().length >= 3 ? undefined : 'Give the reason in a few words',
  }
  const deciding = useMutation({
    mutationFn: (chosen: Kind) =>
      call(decideMount, {
        params: { site: code, id: record.id },
        body: { id, kind: chosen, until: accepts ? until : null, reason },
      }),
    onSuccess: async () => {
      setUntil('')
      setReason('')
      await invalidateSite(client, code)
      notice.done('The decision is written down. The verdict stays as it is.')
      onClose()
    },
  })
  const refused = (field: string) =>
    deciding.error instanceof ProblemError ? deciding.error.faultsAt(field)[0]?.message : undefined
  const submit = (event: FormEvent) => {
    event.preventDefault()
    setTried(true)
    if (kind === '') form.current?.querySelector('input')?.focus()
    else if (faults.until) untilField.current?.focus()
    else if (faults.reason) reasonField.current?.focus()
    else deciding.mutate(kind)
  }
  return (
    <form ref={form} className={classes.form} onSubmit={submit} noValidate>
      <LeaveGuard when={reason.trim() !== '' || until !== ''}>
        The decision is not written down yet. What you typed is lost when you leave.
      </LeaveGuard>
      <ChoiceField
        legend="Decide"
        choices={kinds}
        value={kind}
        onChange={setKind}
        error={tried ? faults.kind : undefined}
      />
      {accepts && (
        <TextInput
          ref={untilField}
          className={classes.day}
          type="date"
          label="Accept until"
          required
          min={addDays(today, 1)}
          value={until}
          error={(tried ? faults.until : undefined) ?? refused('until')}
          onChange={(event) => setUntil(event.currentTarget.value)}
        />
      )}
      <Textarea
        ref={reasonField}
        label="Reason"
        description="What you looked at, and why this can be decided so"
        required
        rows={3}
        value={reason}
        error={(tried ? faults.reason : undefined) ?? refused('reason')}
        onChange={(event) => setReason(event.currentTarget.value)}
      />
      {deciding.isError && (
        <p className={classes.failed} role="alert">
          {deciding.error.message}
        </p>
      )}
      <div className={classes.acts}>
        <Button type="submit" loading={deciding.isPending}>
          Write the decision down
        </Button>
        <Button variant="default" onClick={onClose}>
          Go back
        </Button>
      </div>
    </form>
  )
}
