import { Button, Textarea } from '@mantine/core'
import { reviewGreasePlan, type GreasePlan } from '@shaftbook/contract/grease-plans'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { v7 as newId } from 'uuid'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { useSite } from '../../session/site-access.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { ReviewField } from './review-field.tsx'
import { useFaults } from './use-faults.ts'
import classes from './greasing-dialog.module.css'

interface KeepPlanProps {
  plan: GreasePlan
  onDone: () => void
}

/** Keeps a plan as it is, with the reason and, where it is wanted, the next day of review. */
export function KeepPlan({ plan, onDone }: KeepPlanProps) {
  const { code } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const [id] = useState(() => newId())
  const [reason, setReason] = useState('')
  const [reviewOn, setReviewOn] = useState('')
  const { form, faults, show, showRefusal, clear } = useFaults<{ reason?: string; reviewOn?: string }>()
  const keep = useMutation({
    mutationFn: () =>
      call(reviewGreasePlan, {
        params: { site: code, id: plan.id },
        body: { id, reason: reason.trim(), reviewOn: reviewOn === '' ? null : reviewOn },
      }),
    onSuccess: async () => {
      await invalidateSite(client, code)
      notice.done(`The plan of ${plan.tag} is kept, with the reason.`)
      onDone()
    },
    onError: showRefusal,
  })
  const submit = (): void => {
    keep.reset()
    if (!show(reason.trim().length < 3 ? { reason: 'Say why the plan stays as it is.' } : {})) keep.mutate()
  }
  return (
    <div ref={form} className={classes.body}>
      <div className={classes.pair}>
        <Textarea
          label="Why does the plan stay as it is?"
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
        <ReviewField value={reviewOn} error={faults.reviewOn} onChange={setReviewOn} />
      </div>
      {keep.isError && (
        <p className={classes.failed} role="alert">
          {keep.error.message}
        </p>
      )}
      <div className={classes.row}>
        <Button onClick={submit} loading={keep.isPending}>
          Keep it
        </Button>
        <Button variant="default" onClick={onDone}>
          Go back
        </Button>
      </div>
    </div>
  )
}
