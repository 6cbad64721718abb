import type { ReactNode } from 'react'
import classes from './device-mark.module.css'
import { AppLink } from './link.tsx'

export interface DeviceMarkProps {
  href: string
  /** The page that it leads to is open. */
  active: boolean
  /** The service does not answer. */
  silent: boolean
  /** Records that are written and not sent. */
  waiting: number
  /** Records that the service refused. */
  refused: number
}

interface Line {
  tone: 'refused' | 'silent' | 'waiting' | 'quiet'
  shape: ReactNode
  text: string
}

/** A bar that stops a circle, a line with a gap, an arrow on its way up, a tablet: each state has a shape of its own. */
const shapes = {
  refused: <path d="M8 1.5 14.5 8 8 14.5 1.5 8ZM8 4.8v3.8M8 11v.4" />,
  silent: <path d="M1 8h4M11 8h4M6.5 5.5v5M9.5 5.5v5" />,
  waiting: <path d="M8 13V4M4.5 7 8 3.5 11.5 7M3 15h10" />,
  quiet: <path d="M3.5 1.5h9v13h-9ZM7 12.5h2" />,
}

/** What the mark says, the most pressing first. */
function linesOf({ silent, waiting, refused }: DeviceMarkProps): Line[] {
  const lines: Line[] = []
  if (refused > 0) lines.push({ tone: 'refused', shape: shapes.refused, text: `${refused} refused` })
  if (silent) lines.push({ tone: 'silent', shape: shapes.silent, text: 'No network' })
  if (waiting > 0) lines.push({ tone: 'waiting', shape: shapes.waiting, text: `${waiting} not sent` })
  return lines.length > 0 ? lines : [{ tone: 'quiet', shape: shapes.quiet, text: 'This device' }]
}

/** How it stands with this device: without network, records that wait, records that were refused; leads to its page. */
export function DeviceMark(props: DeviceMarkProps) {
  const lines = linesOf(props)
  const quiet = lines[0]?.tone === 'quiet'
  return (
    <AppLink
      href={props.href}
      className={classes.mark}
      aria-current={props.active ? 'page' : undefined}
      data-quiet={quiet || undefined}
    >
      {!quiet && <span className="visually-hidden">This device: </span>}
      {lines.map(({ tone, shape, text }) => (
        <span key={tone} className={classes.line} data-tone={tone}>
          <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
            {shape}
          </svg>
          <span className={classes.text}>{text}</span>
        </span>
      ))}
    </AppLink>
  )
}
