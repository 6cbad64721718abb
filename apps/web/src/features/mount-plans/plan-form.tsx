import { Button, NativeSelect, Textarea, TextInput } from '@mantine/core'
import { changeMountPlan, createMountPlan, type MountPlan } from '@shaftbook/contract/mount-plans'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useRef, useState, type FormEvent } from 'react'
import { v7 as newId } from 'uuid'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { ProblemError } from '../../api/problem-error.ts'
import { LeaveGuard } from '../../lib/leave-guard.tsx'
import { useToday } from '../../lib/use-today.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { changesOf, planFaults, typedPlan, type TypedPlan } from './plan-entry.ts'
import classes from './plans.module.css'

interface PlanFormProps {
  positionId: string
  /** The plan that is changed; without one a mount is planned. */
  plan?: MountPlan
  /** What the position takes, and what may go on in its place. */
  planned: { designation: string }
  others: readonly { id: string; designation: string }[]
  backHref: string
  onSaved: () => void
}

/** Plans a mount at a position, or changes an open plan. */
export function PlanForm({ positionId, plan, planned, others, backHref, onSaved }: PlanFormProps) {
  const { code, site } = useSite()
  const client = useQueryClient()
  const today = useToday(site.timeZone)
  const form = useRef<HTMLFormElement>(null)
  const [id] = useState(() => newId())
  const [typed, setTyped] = useState(() => typedPlan(plan))
  const [changed, setChanged] = useState(false)
  const [faults, setFaults] = useState<ReadonlyMap<string, string>>(new Map())
  const showFaults = (found: ReadonlyMap<string, string>) => {
    setFaults(found)
    const [first] = found.keys()
    if (first) form.current?.querySelector<HTMLElement>(`[name="${first}"]`)?.focus()
  }
  const sending = useMutation({
    mutationFn: () =>
      plan
        ? call(changeMountPlan, {
            params: { site: code, id: plan.id },
            version: plan.version,
            body: changesOf(typed, plan),
          })
        : call(createMountPlan, { params: { site: code }, body: { id, positionId, ...changesOf(typed, undefined) } }),
    onSuccess: async () => {
      setChanged(false)
      await invalidateSite(client, code)
      onSaved()
    },
    onError: (error) => {
      if (!(error instanceof ProblemError)) return
      showFaults(new Map((error.problem.fields ?? []).map(({ path, message }) => [path, message])))
    },
  })
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const found = planFaults(typed, plan, today)
    showFaults(found)
    if (found.size === 0) sending.mutate()
  }
  const field = (name: keyof TypedPlan) => ({
    name,
    value: typed[name],
    error: faults.get(name),
    autoComplete: 'off',
    onChange: (event: { currentTarget: { value: string } }) => {
      setChanged(true)
      setTyped({ ...typed, [name]: event.currentTarget.value })
    },
  })
  return (
    <form ref={form} className={classes.form} onSubmit={submit} noValidate>
      <LeaveGuard when={changed}>The plan is not saved yet. What you typed is lost when you leave.</LeaveGuard>
      <div className={classes.fields}>
        <TextInput {...field('plannedFor')} type="date" label="Day" min={today} withAsterisk />
        <NativeSelect
          {...field('bearingTypeId')}
          label="Bearing"
          data={[
            { value: '', label: `${planned.designation}, like for like` },
            ...others.map((type) => ({ value: type.id, label: type.designation })),
          ]}
        />
        <TextInput {...field('who')} label="Who" description="A person or a crew; empty for whoever is there" />
      </div>
      <Textarea {...field('reason')} label="Reason" description="Why the bearing is changed" rows={2} withAsterisk />
      <Textarea
        {...field('note')}
        label="Instructions"
        description="What whoever mounts has to know: access, lifting, what to look at on the old bearing"
        rows={4}
      />
      {sending.isError && ![...faults.values()].includes(sending.error.message) && (
        <p className={classes.failed} role="alert">
          {sending.error.message}
        </p>
      )}
      <div className={classes.acts}>
        <Button type="submit" loading={sending.isPending}>
          {plan ? 'Change the plan' : 'Plan the mount'}
        </Button>
        <Button component={AppLink} href={backHref} variant="default">
          Go back
        </Button>
      </div>
    </form>
  )
}
