import { useId, type ReactNode } from 'react'
import { ResponsiveContainer } from 'recharts'
import { ScrollBox } from './scroll-box.tsx'
import classes from './chart-frame.module.css'

export interface ChartColumn<Row> {
  header: string
  unit?: string
  cell: (row: Row) => ReactNode
  align?: 'left' | 'right'
}

interface ChartFrameProps<Row> {
  title: string
  /** What the chart shows, in one sentence with its numbers. */
  sentence: string
  /** Axis titles with units: "Run hours, h". */
  xTitle: string
  yTitle: string
  /** The table behind the chart. */
  columns: readonly ChartColumn<Row>[]
  rows: readonly Row[]
  rowKey: (row: Row) => string
  height?: number
  /** A Recharts chart; use `chartLook` for axes and grid. */
  children: ReactNode
  /** Marks and their words, drawn by the page. */
  legend?: ReactNode
  heading?: 'h2' | 'h3'
}

/** Looks of Recharts parts that all charts share. */
export const chartLook = {
  axis: { stroke: 'var(--rule-strong)', tick: { fill: 'var(--ink-soft)', fontSize: 13 }, tickMargin: 6 },
  grid: { stroke: 'var(--rule)', strokeDasharray: '' },
  // The table behind the chart is its way in for keyboards and screen readers.
  chart: { margin: { top: 8, right: 16, bottom: 4, left: 0 }, accessibilityLayer: false },
  line: { stroke: 'var(--accent)', strokeWidth: 2, dot: false, isAnimationActive: false },
  colours: ['var(--accent)', 'var(--over)', 'var(--not-proven)', 'var(--under)', 'var(--inside)'],
} as const

/** A chart with its title, its sentence, axis titles with units, and its table. */
export function ChartFrame<Row>(props: ChartFrameProps<Row>) {
  const {
    title,
    sentence,
    xTitle,
    yTitle,
    columns,
    rows,
    rowKey,
    height = 260,
    children,
    legend,
    heading: Heading = 'h3',
  } = props
  const titleId = useId()
  return (
    <figure className={classes.frame} aria-labelledby={titleId}>
      <figcaption>
        <Heading id={titleId} className={classes.title}>
          {title}
        </Heading>
        <p className={classes.sentence}>{sentence}</p>
      </figcaption>
      {legend && <div className={classes.legend}>{legend}</div>}
      <p className={classes.yTitle}>{yTitle}</p>
      <div className={classes.chart} aria-hidden="true">
        <ResponsiveContainer width="100%" height={height} initialDimension={{ width: 320, height }}>
          {children}
        </ResponsiveContainer>
      </div>
      <p className={classes.xTitle}>{xTitle}</p>
      <details className={classes.more}>
        <summary>Chart as a table</summary>
        <ScrollBox label={`${title}, as a table`}>
          <table className={classes.table}>
            <thead>
              <tr>
                {columns.map(({ header, unit, align }) => (
                  <th key={header} scope="col" data-align={align}>
                    {header}
                    {unit && `, ${unit}`}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={rowKey(row)}>
                  {columns.map((column) => (
                    <td key={column.header} data-align={column.align}>
                      {column.cell(row)}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollBox>
      </details>
    </figure>
  )
}
