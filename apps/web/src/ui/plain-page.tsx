import type { ReactNode } from 'react'
import classes from './states.module.css'

/** A page without a site's frame round it. */
export function PlainPage({ children }: { children: ReactNode }) {
  return <main className={classes.plain}>{children}</main>
}
