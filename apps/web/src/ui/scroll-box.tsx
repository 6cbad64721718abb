import type { ReactNode } from 'react'
import classes from './scroll-box.module.css'

/** A part of the page that scrolls sideways by itself; reached by keyboard, so that its end can be seen. */
export function ScrollBox({ label, children }: { label: string; children: ReactNode }) {
  return (
    // A scrolling part must take the focus (WCAG 2.1.1), though it is no control.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
    <section className={classes.box} tabIndex={0} aria-label={label}>
      {children}
    </section>
  )
}
