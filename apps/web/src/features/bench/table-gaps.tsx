import { knownGaps } from '@shaftbook/standards/gaps'
import classes from './bench.module.css'

/** What the tables behind the calculations do not cover. */
export function TableGaps() {
  return (
    <details className={classes.gaps}>
      <summary>What the tables do not cover</summary>
      <ul className={classes.sentences}>
        {knownGaps.map((gap) => (
          <li key={gap}>{gap}</li>
        ))}
      </ul>
    </details>
  )
}
