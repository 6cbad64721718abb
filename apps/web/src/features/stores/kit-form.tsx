import { Button, Textarea, TextInput } from '@mantine/core'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useEffect, useRef, useState, type FormEvent } from 'react'
import { v7 } from 'uuid'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { ProblemError } from '../../api/problem-error.ts'
import { LeaveGuard } from '../../lib/leave-guard.tsx'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { kitBody, kitFaults, moved, newLine, type Faults, type KitEntry, type LineEntry } from './kit-entry.ts'
import { KitLineFields } from './kit-line-fields.tsx'
import classes from './kit-form.module.css'

interface KitFormProps {
  start: KitEntry
  submitLabel: string
  save: (body: ReturnType<typeof kitBody>) => Promise<unknown>
  onSaved: () => Promise<void>
  cancelHref: string
}

/** Name, note and lines of a kit. */
export function KitForm({ start, submitLabel, save, onSaved, cancelHref }: KitFormProps) {
  const { code } = useSite()
  const client = useQueryClient()
  const form = useRef<HTMLFormElement>(null)
  const [entry, setEntry] = useState(start)
  const [changed, setChanged] = useState(false)
  const [faults, setFaults] = useState<Faults>({})
  const [faultRound, setFaultRound] = useState(0)
  const showFaults = (found: Faults) => {
    setFaults(found)
    setFaultRound((round) => round + 1)
  }
  const sending = useMutation({
    mutationFn: () => save(kitBody(entry)),
    onSuccess: async () => {
      await invalidateSite(client, code)
      await onSaved()
    },
    onError: (error) => {
      if (error instanceof ProblemError)
        showFaults(Object.fromEntries((error.problem.fields ?? []).map(({ path, message }) => [path, message])))
    },
  })
  useEffect(() => {
    if (faultRound > 0) form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus()
  }, [faultRound])

  const change = (part: Partial<KitEntry>) => {
    setEntry((old) => ({ ...old, ...part }))
    setChanged(true)
    setFaults({})
  }
  const changeLine = (at: number, part: Partial<LineEntry>) =>
    change({ lines: entry.lines.map((line, index) => (index === at ? { ...line, ...part } : line)) })
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const found = kitFaults(entry)
    showFaults(found)
    if (Object.keys(found).length === 0) sending.mutate()
  }
  return (
    <form ref={form} className={classes.form} onSubmit={submit} noValidate>
      <LeaveGuard when={changed && !sending.isPending && !sending.isSuccess}>
        What you typed here is not saved yet. It is lost when you leave.
      </LeaveGuard>
      <TextInput
        label="Name"
        description="Bearing, housing and which end: as people ask for it"
        withAsterisk
        autoComplete="off"
        value={entry.name}
        error={faults['name']}
        onChange={(event) => change({ name: event.currentTarget.value })}
      />
      <Textarea
        label="Note"
        autosize
        minRows={1}
        value={entry.note}
        error={faults['note']}
        onChange={(event) => change({ note: event.currentTarget.value })}
      />
      <PagePart title="Lines">
        {entry.lines.length === 0 && <p className={classes.none}>No line yet.</p>}
        <ol>
          {entry.lines.map((line, at) => (
            <KitLineFields
              key={line.id}
              line={line}
              number={at + 1}
              faultOf={(field) => faults[`lines.${at}.${field}`]}
              onChange={(part) => changeLine(at, part)}
              onRemove={() => change({ lines: entry.lines.filter((_line, index) => index !== at) })}
              onUp={at > 0 ? () => change({ lines: moved(entry.lines, at, -1) }) : undefined}
              onDown={at < entry.lines.length - 1 ? () => change({ lines: moved(entry.lines, at, 1) }) : undefined}
            />
          ))}
        </ol>
        <Button variant="default" onClick={() => change({ lines: [...entry.lines, newLine(v7())] })}>
          Add a line
        </Button>
      </PagePart>
      {sending.isError && (
        <p className={classes.failed} role="alert">
          {sending.error.message}
        </p>
      )}
      <div className={classes.acts}>
        <Button type="submit" loading={sending.isPending}>
          {submitLabel}
        </Button>
        <Button component={AppLink} href={cancelHref} variant="default">
          Go back
        </Button>
      </div>
    </form>
  )
}
