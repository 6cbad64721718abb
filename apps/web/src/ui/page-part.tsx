import { useId, type ReactNode } from 'react'
import classes from './page-part.module.css'

interface PagePartProps {
  title: string
  /** What goes with the heading at its right end: a link, an act. */
  aside?: ReactNode
  children: ReactNode
}

/** A titled part of a page: a heading on its rule, and what belongs to it. */
export function PagePart({ title, aside, children }: PagePartProps) {
  const headingId = useId()
  return (
    <section className={classes.part} aria-labelledby={headingId}>
      <div className={classes.head}>
        <h2 id={headingId} className={classes.title}>
          {title}
        </h2>
        {aside && <div className={classes.aside}>{aside}</div>}
      </div>
      {children}
    </section>
  )
}
