import classes from './field-changes.module.css'
import { fieldChanges } from './audit-words.ts'

interface FieldChangesProps {
  before: Readonly<Record<string, unknown>> | null
  after: Readonly<Record<string, unknown>> | null
}

const shownAtOnce = 3

/** What an entry of the trail changed; a long one opens on demand. */
export function FieldChanges({ before, after }: FieldChangesProps) {
  const changes = fieldChanges(before, after)
  const [first, rest] = [changes.slice(0, shownAtOnce), changes.slice(shownAtOnce)]
  const items = (some: typeof changes) => (
    <ul>
      {some.map(({ field, before: was, after: is }) => (
        <li key={field} className={classes.change}>
          <span className={classes.field}>{field}:</span> {was !== null && <del>{was}</del>}
          {was !== null && ' '}
          {is === null ? 'empty' : <ins>{is}</ins>}
        </li>
      ))}
    </ul>
  )
  if (changes.length === 0) return <span className={classes.field}>only its clock</span>
  return (
    <>
      {items(first)}
      {rest.length > 0 && (
        <details className={classes.rest}>
          <summary>{rest.length} more</summary>
          {items(rest)}
        </details>
      )}
    </>
  )
}
