import type { ReactNode } from 'react'
import { AppLink } from './link.tsx'
import classes from './flag-row.module.css'

/** How pressing a flag is: do it now, soon, or keep an eye on it; `cleared` needs nobody any more. */
export type FlagUrgency = 'now' | 'soon' | 'watch' | 'cleared'

interface FlagRowProps {
  urgency: FlagUrgency
  /** What is wrong: "Regreasing overdue". */
  what: string
  /** Where: the position's tag. */
  tag: string
  href: string
  /** Machine and area, in words. */
  place: string
  /** How late or how far out: "38 days late", "0.012 mm over the band". */
  measure: ReactNode
  /** Since when, who can clear it. */
  since?: ReactNode
  /** The one act that clears it. */
  action: ReactNode
  /** Putting it off, when that is allowed. */
  putOff?: ReactNode
  /** Set while it is put off: until when, why, by whom. */
  putOffUntil?: ReactNode
}

const urgencyWords: Record<FlagUrgency, string> = {
  now: 'Now',
  soon: 'Soon',
  watch: 'Watch',
  cleared: 'Cleared',
}

/** One flag: what, where, how late or how far out, and what clears it. Stands in a list. */
export function FlagRow(props: FlagRowProps) {
  const { urgency, what, tag, href, place, measure, since, action, putOff, putOffUntil } = props
  return (
    <li className={classes.row} data-put-off={putOffUntil ? true : undefined}>
      <UrgencyMark urgency={urgency} />
      <div className={classes.what}>
        <p className={classes.title}>{what}</p>
        <p className={classes.where}>
          <AppLink href={href} className={classes.tag}>
            {tag}
          </AppLink>{' '}
          {place}
        </p>
      </div>
      <div className={classes.measure}>
        <p className={classes.far}>{measure}</p>
        {(putOffUntil ?? since) && <p className={classes.since}>{putOffUntil ?? since}</p>}
      </div>
      <div className={classes.acts}>
        {putOff}
        {action}
      </div>
    </li>
  )
}

/** Urgency as a pennant filled by degree, with its word. */
function UrgencyMark({ urgency }: { urgency: FlagUrgency }) {
  return (
    <p className={classes.urgency} data-urgency={urgency}>
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        <path d="M3 15V1.5" className={classes.pole} />
        <path d="M3 2h10L10.5 5.5 13 9H3Z" className={classes.cloth} />
      </svg>
      {urgencyWords[urgency]}
    </p>
  )
}

/** The list that flag rows stand in. */
export function FlagList({ label, children }: { label: string; children: ReactNode }) {
  return (
    <ul className={classes.list} aria-label={label}>
      {children}
    </ul>
  )
}
