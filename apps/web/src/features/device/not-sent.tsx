import { Button } from '@mantine/core'
import { useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import { reopenWrite, withdrawWrite } from '../../offline/outbox.ts'
import type { OutboxItem } from '../../offline/outbox-rows.ts'
import { sendWaiting } from '../../offline/sender.ts'
import { useDeviceState } from '../../offline/use-device.ts'
import { useSite } from '../../session/site-access.tsx'
import { Confirm } from '../../ui/confirm.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { waitSentence } from './device-words.ts'
import classes from './device.module.css'

/** Records that are written and not in the book: what waits, what was refused and how to mend it. */
export function NotSent({ items, sending }: { items: readonly OutboxItem[]; sending: boolean }) {
  const [unwanted, setUnwanted] = useState<OutboxItem | null>(null)
  const notice = useNotice()
  const throwAway = async ({ id, subjectText }: OutboxItem): Promise<void> => {
    setUnwanted(null)
    const gone = await withdrawWrite(id)
    notice.done(gone ? `${subjectText} is thrown away.` : `${subjectText} was sent already: it is in the book.`)
    void sendWaiting()
  }
  return (
    <PagePart
      title="Not sent yet"
      aside={
        items.length > 0 && (
          <Button variant="default" size="compact-sm" loading={sending} onClick={() => void sendWaiting()}>
            Send now
          </Button>
        )
      }
    >
      {items.length === 0 ? (
        <p className={classes.nothing}>
          Nothing waits. A greasing, a removal or a mount that you write is listed here until it is in the book.
        </p>
      ) : (
        <ul className={classes.list} aria-label="Records not sent yet">
          {items.map((item) => (
            <NotSentRow key={item.id} item={item} onThrowAway={() => setUnwanted(item)} />
          ))}
        </ul>
      )}
      <Confirm
        opened={unwanted !== null}
        title={`Throw away "${unwanted?.subjectText ?? ''}"?`}
        confirmLabel="Throw away"
        tone="grave"
        onConfirm={() => unwanted && void throwAway(unwanted)}
        onCancel={() => setUnwanted(null)}
      >
        It is only on this device. Once it is thrown away nobody can bring it back.
      </Confirm>
    </PagePart>
  )
}

function NotSentRow({ item, onThrowAway }: { item: OutboxItem; onThrowAway: () => void }) {
  const { site } = useSite()
  const { silent } = useDeviceState()
  const navigate = useNavigate()
  const notice = useNotice()
  const refused = item.state === 'refused'
  const reopen = async (): Promise<void> => {
    // the mount sheet opens itself there, and says first why it was refused
    if (item.kind === 'mount') return await navigate({ href: item.address })
    const reopened = await reopenWrite(item.id)
    if (reopened.state === 'open') return await navigate({ href: reopened.address })
    notice.done(
      reopened.state === 'sent'
        ? `${item.subjectText} was sent already: it is in the book.`
        : `Another "${item.subjectText}" is half filled in here: send that one or throw it away first, then open this one.`,
    )
  }
  return (
    <li className={classes.item} data-state={item.state}>
      <div className={classes.text}>
        <p className={classes.subject}>
          {item.subjectText}
          <span className={classes.state}>{refused ? 'Refused' : 'Waits'}</span>
        </p>
        <p className={classes.when}>
          Written <Timestamp at={item.queuedAt} timeZone={site.timeZone} />
        </p>
        {item.problem ? (
          <>
            <p>{item.problem.detail}</p>
            <ul className={classes.faults}>
              {item.problem.fields
                ?.filter(({ message }) => message !== item.problem?.detail)
                .map(({ path, message }) => (
                  <li key={path}>{message}</li>
                ))}
            </ul>
          </>
        ) : (
          <p>{waitSentence(item, silent)}</p>
        )}
      </div>
      <div className={classes.acts}>
        {item.canReopen && (
          <Button variant={refused ? 'filled' : 'default'} onClick={() => void reopen()}>
            {refused ? 'Mend it' : 'Open again'}
            <span className="visually-hidden">: {item.subjectText}</span>
          </Button>
        )}
        <Button variant="default" onClick={onThrowAway}>
          Throw away<span className="visually-hidden">: {item.subjectText}</span>
        </Button>
      </div>
    </li>
  )
}
