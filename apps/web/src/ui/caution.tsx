import type { ReactNode } from 'react'
import classes from './caution.module.css'

interface CautionProps {
  /** The danger, in few words: "The bearing can jump off the taper". */
  title: string
  /** What to do before and while working. */
  children: ReactNode
  /** Where the site's own rules are kept, when the site has said so. */
  siteRules?: ReactNode
}

/** A safety caution, shown where the danger is. It always ends with what comes first: site rules, manuals, licensed practice. */
export function Caution({ title, children, siteRules }: CautionProps) {
  return (
    <aside className={classes.caution} aria-label={`Caution: ${title}`}>
      <svg viewBox="0 0 24 24" width="24" height="24" className={classes.sign} aria-hidden="true">
        <path d="M12 3 22 21H2Z" />
        <path d="M12 10v5M12 17.4v.9" />
      </svg>
      <div>
        <p className={classes.title}>{title}</p>
        <div className={classes.body}>{children}</div>
        <p className={classes.first}>
          The site's rules, the makers' manuals and licensed practice come first. This book does not know whether the
          machine is safe. {siteRules}
        </p>
      </div>
    </aside>
  )
}
