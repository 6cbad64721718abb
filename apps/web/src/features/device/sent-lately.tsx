import type { OutboxItem } from '../../offline/outbox-rows.ts'
import { useSite } from '../../session/site-access.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import classes from './device.module.css'

/** What went into the book from this device lately, the newest first. */
export function SentLately({ items }: { items: readonly OutboxItem[] }) {
  const { site } = useSite()
  if (items.length === 0) return null
  return (
    <PagePart title="Sent lately">
      <ul className={classes.list} aria-label="Sent lately">
        {items.toReversed().map(({ id, subjectText, lastAt }) => (
          <li key={id} className={classes.sent}>
            <span>{subjectText}</span>
            {lastAt && <Timestamp at={lastAt} timeZone={site.timeZone} />}
          </li>
        ))}
      </ul>
    </PagePart>
  )
}
