import { Button } from '@mantine/core'
import type { Problem } from '@shaftbook/contract/problem'
import { queryOptions } from '@tanstack/react-query'
import { useState } from 'react'
import { openDeviceBook } from '../../offline/device-book.ts'
import { findHolder } from '../../offline/holder.ts'
import { itemsOf, type OutboxItem } from '../../offline/outbox-rows.ts'
import { reopenWrite, type Reopened } from '../../offline/outbox.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import classes from './sheet.module.css'

/** The sheet of this page that lies in the outbox and is not sent, as it is when the page is opened; null where none does. */
export const sheetInOutboxQuery = (site: string, address: string) =>
  queryOptions({
    queryKey: ['mounts', site, 'in-outbox', address],
    queryFn: async (): Promise<OutboxItem | null> => {
      const holder = (await openDeviceBook()) ? await findHolder() : null
      if (!holder) return null
      const items = await itemsOf(holder)
      return (
        items.findLast((item) => item.kind === 'mount' && item.state !== 'sent' && item.address === address) ?? null
      )
    },
    networkMode: 'always',
    staleTime: Infinity,
    gcTime: 0,
  })

interface SheetInOutboxProps {
  item: OutboxItem
  /** It is out of the outbox again: a sheet half filled in, with what the service said of it. */
  onOpened: (problem: Problem | null) => void
}

/** A sheet in the outbox is not filled in a second time: it waits, or it was refused and is opened again. */
export function SheetInOutbox({ item, onOpened }: SheetInOutboxProps) {
  const { code, site } = useSite()
  const [opening, setOpening] = useState(false)
  const [stays, setStays] = useState<Exclude<Reopened['state'], 'open'> | null>(null)
  const open = async (): Promise<void> => {
    setOpening(true)
    const { state } = await reopenWrite(item.id)
    setOpening(false)
    if (state === 'open') onOpened(item.problem)
    else setStays(state)
  }
  const refused = item.state === 'refused'
  return (
    <div className={classes.waiting}>
      <p>
        {refused ? 'The service did not take the sheet' : 'A sheet waits here to be sent. It was'} written{' '}
        <Timestamp at={item.queuedAt} timeZone={site.timeZone} />.
      </p>
      {item.problem && <p className={classes.failed}>{item.problem.detail}</p>}
      {stays === 'half-filled' && (
        <p>
          Another sheet is half filled in here. Throw one of them away under{' '}
          <AppLink href={paths.device(code)}>This device</AppLink>, then open the other one.
        </p>
      )}
      {stays === 'sent' ? (
        <p>
          It was sent meanwhile: <AppLink href={paths.mounts(code)}>it is among the mounts</AppLink>.
        </p>
      ) : (
        <Button size="touch" variant={refused ? 'filled' : 'default'} loading={opening} onClick={() => void open()}>
          {refused ? 'Open it again' : 'Take it back and change it'}
        </Button>
      )}
      {!refused && (
        <p className={classes.hint}>
          It is sent by itself when there is a network.{' '}
          <AppLink href={paths.device(code)}>What waits on this device</AppLink>
        </p>
      )}
    </div>
  )
}
