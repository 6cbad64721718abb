import classes from './board.module.css'

/** How many flags are open there: a pennant and its number; nothing to see where there is none. */
export function OpenFlags({ count }: { count: number }) {
  if (count === 0)
    return (
      <span className={classes.flags}>
        <span className="visually-hidden">no open flag</span>
      </span>
    )
  return (
    <span className={classes.flags}>
      <svg viewBox="0 0 16 16" width="14" height="14" aria-hidden="true" focusable="false">
        <path d="M3 15V1.5" className={classes.pole} />
        <path d="M3 2h10L10.5 5.5 13 9H3Z" className={classes.cloth} />
      </svg>
      {count}
      <span className="visually-hidden">{count === 1 ? ' open flag' : ' open flags'}</span>
    </span>
  )
}
