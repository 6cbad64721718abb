import type { ReactNode } from 'react'
import { AppLink } from './link.tsx'
import classes from './section-nav.module.css'

export interface SectionPlace {
  key: string
  label: ReactNode
  href: string
  /** How many things lie there. */
  count?: number | undefined
}

interface SectionNavProps {
  label: string
  places: readonly SectionPlace[]
  active: string
}

/** The parts of one page or section, as links: each has its address. */
export function SectionNav({ label, places, active }: SectionNavProps) {
  return (
    <nav aria-label={label} className={classes.nav}>
      <ul className={classes.places}>
        {places.map((place) => (
          <li key={place.key}>
            <AppLink
              href={place.href}
              className={classes.place}
              aria-current={place.key === active ? 'page' : undefined}
            >
              {place.label}
              {place.count !== undefined && <span className={classes.count}>{place.count}</span>}
            </AppLink>
          </li>
        ))}
      </ul>
    </nav>
  )
}
