import type { ReactNode } from 'react'
import classes from './gallery.module.css'

export function GallerySection({ title, children }: { title: string; children: ReactNode }) {
  return (
    <section className={classes.section} aria-label={title}>
      <h2 className={classes.title}>{title}</h2>
      {children}
    </section>
  )
}
