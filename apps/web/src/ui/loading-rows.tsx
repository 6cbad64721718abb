import classes from './states.module.css'

interface LoadingRowsProps {
  rows?: number
  /** What is being fetched: "positions". */
  what: string
}

/** Stands where rows will be; keeps the page from jumping and says what it waits for. */
export function LoadingRows({ rows = 6, what }: LoadingRowsProps) {
  return (
    <div className={classes.loading}>
      <output className={classes.loadingText}>Loading {what}…</output>
      {Array.from({ length: rows }, (_, row) => (
        <div key={row} className={classes.loadingRow} aria-hidden="true">
          <span style={{ width: `${18 + ((row * 7) % 10)}%` }} />
          <span style={{ width: `${30 + ((row * 13) % 22)}%` }} />
          <span style={{ width: '12%' }} />
        </div>
      ))}
    </div>
  )
}
