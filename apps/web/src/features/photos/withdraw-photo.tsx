import { Button, TextInput } from '@mantine/core'
import { withdrawPhoto, type Photo } from '@shaftbook/contract/photos'
import { engineering } from '@shaftbook/contract/roles'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState, type FormEvent } from 'react'
import { call } from '../../api/call.ts'
import { useSite } from '../../session/site-access.tsx'
import { useNotice } from '../../ui/notice.tsx'
import classes from './photo-viewer.module.css'

/** Takes a photo out of sight, with a reason that stays: for the one who added it, engineers and managers. */
export function WithdrawPhoto({ photo }: { photo: Photo }) {
  const { code, me, site, may } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  const [isAsking, setAsking] = useState(false)
  const [reason, setReason] = useState('')
  const withdrawing = useMutation({
    mutationFn: () => call(withdrawPhoto, { params: { site: code, id: photo.id }, body: { reason } }),
    onSuccess: async () => {
      await client.invalidateQueries({ queryKey: ['photos', code] })
      notice.done('The photo is withdrawn. Its reason stays in the book.')
    },
  })
  const isOwn = photo.addedBy === me.name
  const isKeeper = engineering.some((role) => role === site.role)
  if (photo.withdrawnAt !== null || !may(withdrawPhoto) || !(isOwn || isKeeper)) return null
  if (!isAsking)
    return (
      <Button variant="subtle" color="over" className={classes.withdraw} onClick={() => setAsking(true)}>
        Withdraw this photo
      </Button>
    )
  const ask = (event: FormEvent) => {
    event.preventDefault()
    withdrawing.mutate()
  }
  return (
    <form className={classes.reason} onSubmit={ask}>
      <TextInput
        size="touch"
        label="Why should it not be seen?"
        description="The picture is then shown to nobody; who withdrew it and why stays"
        ref={focusOnSight}
        value={reason}
        error={withdrawing.error?.message}
        onChange={(event) => setReason(event.currentTarget.value)}
      />
      <div className={classes.turn}>
        <Button
          type="submit"
          size="touch"
          color="over"
          loading={withdrawing.isPending}
          disabled={reason.trim().length < 3}
        >
          Withdraw
        </Button>
        <Button size="touch" variant="default" onClick={() => setAsking(false)}>
          Go back
        </Button>
      </div>
    </form>
  )
}

const focusOnSight = (input: HTMLInputElement | null): void => input?.focus()
