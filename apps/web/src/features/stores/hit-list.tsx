import type { KeyboardEvent, ReactNode } from 'react'
import { AppLink } from '../../ui/link.tsx'
import classes from './hit-list.module.css'

export interface ShownHit {
  id: string
  href: string
  name: ReactNode
  /** What tells it from others. */
  about?: ReactNode
  /** At the right end: a bin, a number of positions. */
  aside?: ReactNode
}

/** Things found, each a link that arrow keys reach. */
export function HitList({ label, hits }: { label: string; hits: readonly ShownHit[] }) {
  return (
    <ul aria-label={label}>
      {hits.map(({ id, href, name, about, aside }) => (
        <li key={id}>
          <AppLink href={href} className={classes.hit} data-hit data-plain={about === undefined || undefined}>
            <span className={classes.name}>{name}</span>
            {about && <span className={classes.about}>{about}</span>}
            {aside && <span className={classes.aside}>{aside}</span>}
          </AppLink>
        </li>
      ))}
    </ul>
  )
}

/** Lets the arrow keys go from the search field down through everything found, and back up. */
export function stepThroughHits(event: KeyboardEvent<HTMLElement>): void {
  const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0
  if (step === 0) return
  const field = event.currentTarget.querySelector<HTMLElement>('input[type="search"]')
  const stops = [field, ...event.currentTarget.querySelectorAll<HTMLElement>('[data-hit]')].filter(
    (stop): stop is HTMLElement => stop !== null,
  )
  const at = stops.indexOf(event.target as HTMLElement)
  const next = at < 0 ? undefined : stops[at + step]
  if (!next) return
  event.preventDefault()
  next.focus()
}
