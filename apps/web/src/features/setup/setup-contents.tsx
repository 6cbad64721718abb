import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import classes from './setup-contents.module.css'
import { setupParts } from './setup-parts.ts'

/** The contents of the setup, like the first page of a book. */
export function SetupContents() {
  const { code, may } = useSite()
  return (
    <div className={classes.contents}>
      {setupParts.map(({ title, parts }) => (
        <section key={title} aria-labelledby={idOf(title)}>
          <h2 id={idOf(title)} className={classes.title}>
            {title}
          </h2>
          <ul>
            {parts
              .filter(({ endpoint }) => may(endpoint))
              .map(({ part, label, sentence }) => (
                <li key={part} className={classes.part}>
                  <AppLink href={paths.setupPart(code, part)} className={classes.link}>
                    {label}
                  </AppLink>
                  <p className={classes.sentence}>{sentence}</p>
                </li>
              ))}
          </ul>
        </section>
      ))}
      <section aria-labelledby={idOf('Beside the book')}>
        <h2 id={idOf('Beside the book')} className={classes.title}>
          Beside the book
        </h2>
        <ul>
          <li className={classes.part}>
            <AppLink href={paths.bench(code)} className={classes.link}>
              Bench
            </AppLink>
            <p className={classes.sentence}>Every calculation, to try with numbers of your own.</p>
          </li>
        </ul>
      </section>
    </div>
  )
}

function idOf(title: string): string {
  return `contents-${title.toLowerCase().replaceAll(' ', '-')}`
}
