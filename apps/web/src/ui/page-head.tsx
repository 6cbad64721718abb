import type { ReactNode } from 'react'
import { DefinitionList, type Definition } from './definition-list.tsx'
import { AppLink } from './link.tsx'
import { PageTitle } from './page-title.tsx'
import classes from './page-head.module.css'

interface PageHeadProps {
  title: string
  /** One line that says what the page shows now. */
  sentence?: ReactNode
  /** Where this page hangs, from the outside in. */
  trail?: readonly { label: string; href: string }[]
  /** Buttons of the page, most important last. */
  actions?: ReactNode
  /** Facts of the thing itself, in a row under the title. */
  facts?: readonly Definition[]
}

/** The head of a page, like the title block of a drawing: what it is, then the page's own rule. */
export function PageHead({ title, sentence, trail, actions, facts }: PageHeadProps) {
  return (
    <header className={classes.head}>
      <PageTitle title={title} />
      {trail && trail.length > 0 && (
        <nav aria-label="Where this is">
          <ol className={classes.trail}>
            {trail.map(({ label, href }) => (
              <li key={label}>
                <AppLink href={href}>{label}</AppLink>
              </li>
            ))}
          </ol>
        </nav>
      )}
      <div className={classes.line}>
        <h1 className={classes.title}>{title}</h1>
        {actions && <div className={classes.actions}>{actions}</div>}
      </div>
      {sentence && <p className={classes.sentence}>{sentence}</p>}
      {facts && (
        <div className={classes.facts}>
          <DefinitionList items={facts} layout="row" />
        </div>
      )}
    </header>
  )
}
