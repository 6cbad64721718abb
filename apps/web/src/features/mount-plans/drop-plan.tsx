import { Button, Textarea } from '@mantine/core'
import { changeMountPlan, type MountPlan } from '@shaftbook/contract/mount-plans'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { useSite } from '../../session/site-access.tsx'
import { Confirm } from '../../ui/confirm.tsx'
import { useNotice } from '../../ui/notice.tsx'

/** Drops an open plan, with the reason. */
export function DropPlan({ plan }: { plan: MountPlan }) {
  const { code } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const [asked, setAsked] = useState(false)
  const [reason, setReason] = useState('')
  const [tried, setTried] = useState(false)
  const missing = reason.trim().length < 3
  const dropping = useMutation({
    mutationFn: () =>
      call(changeMountPlan, {
        params: { site: code, id: plan.id },
        version: plan.version,
        body: { droppedReason: reason.trim() },
      }),
    onSuccess: async () => {
      setAsked(false)
      await invalidateSite(client, code)
      notice.done('The plan is dropped. It stays in the book with its reason.')
    },
  })
  const failed = dropping.isError ? dropping.error.message : undefined
  return (
    <>
      <Button variant="default" onClick={() => setAsked(true)}>
        Drop the plan
      </Button>
      <Confirm
        opened={asked}
        title={`Drop the mount planned at ${plan.tag}?`}
        confirmLabel="Drop it"
        busy={dropping.isPending}
        onCancel={() => setAsked(false)}
        onConfirm={() => {
          setTried(true)
          if (!missing) dropping.mutate()
        }}
      >
        <Textarea
          label="Reason"
          required
          rows={2}
          value={reason}
          error={(tried && missing ? 'Give the reason in a few words' : undefined) ?? failed}
          onChange={(event) => setReason(event.currentTarget.value)}
          data-autofocus
        />
      </Confirm>
    </>
  )
}
