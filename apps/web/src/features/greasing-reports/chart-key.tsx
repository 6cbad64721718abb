import classes from './reports.module.css'

/** What the colours of a chart mean, in the order in which they are stacked. */
export function ChartKey({ entries }: { entries: readonly { fill: string; words: string }[] }) {
  return entries.map(({ fill, words }) => (
    <span key={words} className={classes.key}>
      <span className={classes.swatch} style={{ background: fill }} aria-hidden="true" />
      {words}
    </span>
  ))
}
