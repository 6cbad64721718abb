import { AppLink } from '../../ui/link.tsx'
import { PageTitle } from '../../ui/page-title.tsx'
import classes from './sheet-head.module.css'

interface SheetHeadProps {
  title: string
  /** What is there: the position in words. */
  sentence: string
  back: { label: string; href: string }
}

/** The head of a sheet, small, so that the step has the screen. */
export function SheetHead({ title, sentence, back }: SheetHeadProps) {
  return (
    <header className={classes.head}>
      <PageTitle title={title} />
      <h1 className={classes.title}>{title}</h1>
      <AppLink href={back.href}>{back.label}</AppLink>
      <p className={classes.sentence}>{sentence}</p>
    </header>
  )
}
