import { useId, type ReactNode } from 'react'
import classes from './sheet.module.css'

/** A titled part of a step's screen. */
export function StepPart({ title, hint, children }: { title: string; hint?: ReactNode; children: ReactNode }) {
  const headingId = useId()
  return (
    <section className={classes.part} aria-labelledby={headingId}>
      <h3 id={headingId} className={classes.partTitle}>
        {title}
      </h3>
      {hint && <p className={classes.hint}>{hint}</p>}
      <div className={classes.fields}>{children}</div>
    </section>
  )
}

/** Two short fields beside each other, where there is room. */
export function FieldPair({ children }: { children: ReactNode }) {
  return <div className={classes.pair}>{children}</div>
}

/** A sentence that asks, or warns, beside what it is about. */
export function AskLine({ children }: { children: ReactNode }) {
  return <p className={classes.ask}>{children}</p>
}
