import { useId, type ReactNode } from 'react'
import classes from './mount-record.module.css'

/** A titled part of the record. */
export function RecordPart({ title, children }: { title: string; children: ReactNode }) {
  const headingId = useId()
  return (
    <section className={classes.part} aria-labelledby={headingId}>
      <h2 id={headingId}>{title}</h2>
      {children}
    </section>
  )
}
