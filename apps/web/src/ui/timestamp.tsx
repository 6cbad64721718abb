import { useState } from 'react'
import { relativeTime } from './relative-time.ts'

interface TimestampProps {
  /** ISO 8601 instant. */
  at: string
  /** IANA time zone of the plant; the browser's own when absent. */
  timeZone?: string | undefined
  /** The instant "ago" counts from; the moment of drawing when absent. */
  now?: Date
  /** Date only, for things that happen on a day. */
  dateOnly?: boolean
  relative?: boolean
}

/** A moment as the plant's clock says it, with how long ago that was. */
export function Timestamp({ at, timeZone, now, dateOnly = false, relative = true }: TimestampProps) {
  const [drawnAt] = useState(() => new Date())
  const instant = new Date(at)
  const text = new Intl.DateTimeFormat('en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    ...(dateOnly ? {} : { hour: '2-digit', minute: '2-digit' }),
    ...(timeZone ? { timeZone } : {}),
  }).format(instant)
  return (
    <time dateTime={at} style={{ whiteSpace: 'nowrap' }}>
      {text}
      {relative && (
        <span style={{ color: 'var(--ink-soft)', fontWeight: 400 }}> · {relativeTime(instant, now ?? drawnAt)}</span>
      )}
    </time>
  )
}
