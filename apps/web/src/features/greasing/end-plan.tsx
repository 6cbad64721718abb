import { Button, Textarea } from '@mantine/core'
import { endGreasePlan, type GreasePlan } from '@shaftbook/contract/grease-plans'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { useSite } from '../../session/site-access.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { planTitle } from './task-words.ts'
import { useFaults } from './use-faults.ts'
import classes from './greasing-dialog.module.css'

/** Ends a plan without a new one, with the reason. */
export function EndPlan({ plan, onDone }: { plan: GreasePlan; onDone: () => void }) {
  const { code } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const [reason, setReason] = useState('')
  const { form, faults, show, showRefusal, clear } = useFaults<{ reason?: string }>()
  const title = planTitle(plan)
  const end = useMutation({
    mutationFn: () => call(endGreasePlan, { params: { site: code, id: plan.id }, body: { reason: reason.trim() } }),
    onSuccess: async () => {
      await invalidateSite(client, code)
      notice.done(`${plan.tag}: the plan "${title}" has ended.`)
      onDone()
    },
    onError: showRefusal,
  })
  const submit = (): void => {
    end.reset()
    if (!show(reason.trim().length < 3 ? { reason: 'Say why it ends.' } : {})) end.mutate()
  }
  return (
    <div ref={form} className={classes.body}>
      <p>
        End the plan "{title}" of {plan.tag}? From then on nothing reminds of it. What was done stays in the book.
      </p>
      <Textarea
        label="Reason"
        required
        autosize
        minRows={2}
        value={reason}
        error={faults.reason}
        onChange={(event) => {
          setReason(event.currentTarget.value)
          clear()
        }}
      />
      {end.isError && (
        <p className={classes.failed} role="alert">
          {end.error.message}
        </p>
      )}
      <div className={classes.acts}>
        <Button variant="default" onClick={onDone}>
          Go back
        </Button>
        <Button color="over" onClick={submit} loading={end.isPending}>
          End this plan
        </Button>
      </div>
    </div>
  )
}
