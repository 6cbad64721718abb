import { LifeEndShape } from './life-end-mark.tsx'
import type { LifeBar, LifeFitment, LifeStripGeometry } from './life-strip-geometry.ts'
import { VerdictShape } from './verdict-mark.tsx'
import classes from './life-strip.module.css'

/** Heights on the strip, px. */
export const lifeLayout = {
  verdict: 10,
  bar: 22,
  barHeight: 24,
  tick: 50,
  tickHeight: 10,
  end: 72,
  axis: 86,
  label: 103,
  height: 110,
}

interface LifeDrawingProps {
  strip: LifeStripGeometry
  fitments: readonly LifeFitment[]
  chosenId: string | undefined
  width: number
  side: number
}

/** The picture of the strip. It is hidden from screen readers: the buttons over it and the table say the same. */
export function LifeDrawing({ strip, fitments, chosenId, width, side }: LifeDrawingProps) {
  return (
    <svg width={width} height={lifeLayout.height} aria-hidden="true">
      <g transform={`translate(${side} 0)`}>
        <YearAxis years={strip.years} width={width - 2 * side} />
        {strip.bars.map((bar, index) => (
          <Bar key={bar.id} bar={bar} fitment={fitments[index]!} chosen={bar.id === chosenId} />
        ))}
      </g>
    </svg>
  )
}

function YearAxis({ years, width }: { years: LifeStripGeometry['years']; width: number }) {
  const { bar, axis, label } = lifeLayout
  return (
    <g className={classes.axis}>
      {years.map(({ x, label: year }) => (
        <g key={year}>
          <path d={`M${x} ${bar - 4}V${axis + 4}`} className={classes.yearLine} />
          {x <= width - 72 && (
            <text x={x} y={label} textAnchor={x < 14 ? 'start' : 'middle'}>
              {year}
            </text>
          )}
        </g>
      ))}
      <path d={`M0 ${axis}H${width}`} />
      <path d={`M${width} ${bar - 4}V${axis + 4}`} className={classes.today} />
      <text x={width} y={label} textAnchor="end" className={classes.todayText}>
        today
      </text>
    </g>
  )
}

function Bar({ bar, fitment, chosen }: { bar: LifeBar; fitment: LifeFitment; chosen: boolean }) {
  const { bar: top, barHeight, tick, tickHeight, verdict, end } = lifeLayout
  const roomForName = bar.width > fitment.bearing.length * 7 + 12
  return (
    <g data-open={bar.open || undefined} data-chosen={chosen || undefined} className={classes.fitment}>
      <rect x={bar.x + 0.5} y={top} width={bar.width - 1} height={barHeight} className={classes.body} />
      {roomForName && (
        <text x={bar.x + 8} y={top + barHeight / 2} dominantBaseline="central">
          {fitment.bearing}
        </text>
      )}
      <path d={bar.ticks.map((x) => `M${x} ${tick}v${tickHeight}`).join('')} className={classes.tick} />
      {fitment.verdict && (
        <g transform={`translate(${bar.startX + 1} ${verdict})`}>
          <VerdictShape verdict={fitment.verdict} r={6} />
        </g>
      )}
      {fitment.removedOn && (
        <g transform={`translate(${bar.endX - 0.5} ${end})`}>
          <path d={`M${bar.x + bar.width - bar.endX} ${top + barHeight - end}L0 -6`} className={classes.endLine} />
          <LifeEndShape end={fitment.end ?? 'lost'} />
        </g>
      )}
    </g>
  )
}
