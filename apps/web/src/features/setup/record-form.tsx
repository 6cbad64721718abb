import { Button } from '@mantine/core'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useRef, useState, type FormEvent } from 'react'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { faultsOf, saidAtField } from './refusal.ts'
import { LeaveGuard } from '../../lib/leave-guard.tsx'
import { useUnits } from '../../lib/units.tsx'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { FormField } from './form-field.tsx'
import type { FieldGroup, FormValue } from './form-spec.ts'
import { readForm } from './read-form.ts'
import classes from './record-form.module.css'
import { startValues } from './start-values.ts'

interface RecordFormProps {
  groups: readonly FieldGroup[]
  /** The values to begin with, by field. */
  start: Readonly<Record<string, unknown>>
  submitLabel: string
  /** Sends the body; what the service refuses is shown at its field. */
  save: (body: Record<string, unknown>) => Promise<unknown>
  /** After it was saved, and the site's lists are read again. */
  onSaved: () => void
  cancelHref: string
  /** Stands between the fields and the buttons, such as a caution. */
  children?: React.ReactNode
}

/** The one form of the setup: fields, faults where they are, and a question before unsent input is left. */
export function RecordForm({ groups, start, submitLabel, save, onSaved, cancelHref, children }: RecordFormProps) {
  const { code, site } = useSite()
  const { unit } = useUnits()
  const client = useQueryClient()
  const form = useRef<HTMLFormElement>(null)
  const fields = groups.flatMap((group) => group.fields)
  const [values, setValues] = useState(() => startValues(fields, start, unit))
  const [changed, setChanged] = useState(false)
  const [faults, setFaults] = useState<ReadonlyMap<string, string>>(new Map())
  const sending = useMutation({
    mutationFn: save,
    onSuccess: async () => {
      setChanged(false)
      await invalidateSite(client, code)
      onSaved()
    },
    onError: (error) => showFaults(faultsOf(error)),
  })

  const showFaults = (found: ReadonlyMap<string, string>) => {
    setFaults(found)
    const first = fields.find(({ name }) => found.has(name))
    if (first) form.current?.querySelector<HTMLElement>(`[name="${first.name}"]`)?.focus()
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const reading = readForm(fields, values, { unit, timeZone: site.timeZone, now: new Date() })
    showFaults(reading.faults)
    if (reading.faults.size === 0) sending.mutate(reading.body)
  }
  const change = (name: string, value: FormValue) => {
    setChanged(true)
    setValues((old) => ({ ...old, [name]: value }))
    setFaults((old) => new Map([...old].filter(([key]) => key !== name)))
  }
  return (
    <form ref={form} className={classes.form} onSubmit={submit} noValidate>
      <LeaveGuard when={changed}>What you typed here is not saved yet. It is lost when you leave.</LeaveGuard>
      {groups.map((group, at) => (
        <section key={group.title ?? at} className={classes.group} aria-label={group.title}>
          {group.title && <h2 className={classes.title}>{group.title}</h2>}
          {group.text && <p className={classes.text}>{group.text}</p>}
          <div className={classes.fields}>
            {group.fields.map((field) => (
              <FormField
                key={field.name}
                field={field}
                value={values[field.name] ?? ''}
                fault={faults.get(field.name)}
                onChange={(value) => change(field.name, value)}
              />
            ))}
          </div>
        </section>
      ))}
      {children}
      {sending.isError && !saidAtField(sending.error) && (
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
