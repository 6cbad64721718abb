import { useId, type ReactNode } from 'react'
import classes from './setup.module.css'

/** A part of a page under its own heading. */
export function PartSection({ title, actions, children }: { title: string; actions?: ReactNode; children: ReactNode }) {
  const id = useId()
  return (
    <section className={classes.section} aria-labelledby={id}>
      <div className={classes.sectionHead}>
        <h2 id={id} className={classes.sectionTitle}>
          {title}
        </h2>
        {actions}
      </div>
      {children}
    </section>
  )
}
