import { useId, type ReactNode } from 'react'
import classes from './sheet.module.css'

/** One part of the sheet, in the order of the work. */
export function SheetSection({ title, hint, children }: { title: string; hint?: ReactNode; children: ReactNode }) {
  const headingId = useId()
  return (
    <section className={classes.section} aria-labelledby={headingId}>
      <h2 id={headingId} className={classes.heading}>
        {title}
      </h2>
      {hint && <p className={classes.hint}>{hint}</p>}
      <div className={classes.fields}>{children}</div>
    </section>
  )
}

/** Two short fields beside each other, where there is room. */
export function SheetPair({ children }: { children: ReactNode }) {
  return <div className={classes.pair}>{children}</div>
}
