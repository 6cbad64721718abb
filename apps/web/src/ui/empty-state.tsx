import type { ReactNode } from 'react'
import classes from './states.module.css'

interface EmptyStateProps {
  /** What is not there: "No flags in the drying house". */
  title: string
  /** Why, and what to do. */
  text?: ReactNode
  action?: ReactNode
  heading?: 'h1' | 'h2' | 'h3'
}

/** A list or page with nothing in it: says so, says why, and offers the next step. */
export function EmptyState({ title, text, action, heading: Heading = 'h2' }: EmptyStateProps) {
  return (
    <div className={classes.state}>
      <Heading className={classes.title}>{title}</Heading>
      {text && <p className={classes.text}>{text}</p>}
      {action && <div className={classes.action}>{action}</div>}
    </div>
  )
}
