import { useElementSize } from '@mantine/hooks'
import { useId, type ReactNode } from 'react'
import { lengthDigits, lengthUnits, type LengthUnit } from '../lib/length-units.ts'
import { useUnits } from '../lib/units.tsx'
import { gaugeGeometry, type GaugeGeometry, type GaugeInput } from './clearance-gauge-geometry.ts'
import { gaugeLabels, GaugeLabels } from './clearance-gauge-labels.tsx'
import { GaugeTable } from './clearance-gauge-table.tsx'
import { gaugeWords, pastGaugeWords } from './clearance-gauge-words.ts'
import classes from './clearance-gauge.module.css'

interface ClearanceGaugeProps extends GaugeInput {
  /** `panel` is the large form, for the mount sheet on a tablet or a desk. */
  size?: 'phone' | 'panel'
  /** Clearance class, such as "C3". */
  classLabel?: string | undefined
  /** Where the band comes from: "generic guide" or the chart's name. */
  bandSource?: string | undefined
  /** The gauge as it stood when a record was kept: it says what was, not what to do. */
  past?: boolean
  /** Verdict or advice, shown under the sentence. */
  children?: ReactNode
}

/**
 * The clearance gauge: a vertical scale with the bench clearance, the target window, the residual minimum and every
 * reading as it comes, so that "how much further" is seen. Takes micrometres, shows the person's unit.
 */
export function ClearanceGauge(props: ClearanceGaugeProps) {
  const { size = 'phone', classLabel, bandSource, past = false, children } = props
  const { unit } = useUnits()
  const { ref, width } = useElementSize<HTMLDivElement>()
  const titleId = useId()
  const words = past ? pastGaugeWords(props, unit) : gaugeWords(props, unit)
  const height = size === 'panel' ? 460 : 324
  const labelWidth = size === 'panel' && width > 440 ? 176 : 140

  return (
    <div className={classes.box}>
      <figure className={classes.gauge} data-size={size}>
        <figcaption className={classes.says} aria-live="polite">
          <p className={classes.headline} data-tone={words.tone}>
            {words.headline}
          </p>
          <p className={classes.detail}>{words.detail}</p>
          {children && <div className={classes.verdict}>{children}</div>}
        </figcaption>
        <div ref={ref} className={classes.drawing} style={{ height }}>
          {width > 0 && (
            <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby={titleId}>
              <title id={titleId}>{`Clearance gauge. ${words.headline}. ${words.detail}`}</title>
              <GaugeDrawing
                geometry={gaugeGeometry(props, { width, height, labelWidth, umPerUnit: lengthUnits[unit].um })}
                input={props}
                unit={unit}
                classLabel={classLabel}
              />
            </svg>
          )}
        </div>
        {props.readings.length > 0 && (
          <p className={classes.legend}>
            <RowKey row="A" />
            <RowKey row="B" />
            <span>left to right as taken</span>
          </p>
        )}
        <details className={classes.more}>
          <summary>Readings as a table</summary>
          <GaugeTable input={props} unit={unit} classLabel={classLabel} bandSource={bandSource} />
        </details>
      </figure>
    </div>
  )
}

function RowKey({ row }: { row: 'A' | 'B' }) {
  return (
    <span>
      <svg width="10" height="10" aria-hidden="true">
        <rect x="1" y="1" width="8" height="8" className={row === 'A' ? classes.rowA : classes.rowB} />
      </svg>
      row {row}
    </span>
  )
}

interface GaugeDrawingProps {
  geometry: GaugeGeometry
  input: GaugeInput
  unit: LengthUnit
  classLabel: string | undefined
}

function GaugeDrawing({ geometry: g, input, unit, classLabel }: GaugeDrawingProps) {
  const hatch = useId()
  return (
    <>
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V6" className={classes.hatch} />
        </pattern>
      </defs>
      {g.window && (
        <rect
          x={g.axisX}
          y={g.window.topY}
          width={g.plotRight - g.axisX}
          height={Math.max(2, g.window.bottomY - g.window.topY)}
          className={classes.window}
        />
      )}
      {g.residual && (
        <g className={classes.residual}>
          <rect
            x={g.axisX}
            y={g.residual.y}
            width={g.plotRight - g.axisX}
            height={Math.min(10, Math.max(0, g.bottom - g.residual.y))}
            fill={`url(#${hatch})`}
            stroke="none"
          />
          <path d={`M${g.axisX} ${g.residual.y}H${g.plotRight}`} />
        </g>
      )}
      {g.bench && <path d={`M${g.axisX} ${g.bench.y}H${g.plotRight}`} className={classes.bench} />}
      {g.classRange && (
        <g className={classes.classRange}>
          <path d={`M${g.axisX + 13} ${g.classRange.topY}h-6V${g.classRange.bottomY}h6`} />
          {classLabel && (
            <text x={g.axisX + 7} y={g.classRange.topY - 5}>
              {classLabel}
            </text>
          )}
        </g>
      )}
      <Axis geometry={g} unit={unit} />
      {g.toGo && <ToGo geometry={g} toGo={g.toGo} />}
      {g.readings.map((reading, index) => (
        <g key={index}>
          <rect
            x={reading.x - 4}
            y={reading.y - 4}
            width="8"
            height="8"
            className={reading.row === 'A' ? classes.rowA : classes.rowB}
          />
          {reading.off && <OffScaleArrow x={reading.x} y={reading.y} up={reading.off === 'above'} />}
        </g>
      ))}
      {g.mean && (
        <g className={classes.mean}>
          <path d={`M${g.plotLeft} ${g.mean.y}H${g.plotRight}`} />
          {g.mean.off && <OffScaleArrow x={g.plotRight - 10} y={g.mean.y} up={g.mean.off === 'above'} />}
        </g>
      )}
      <GaugeLabels labels={gaugeLabels(g, input, (um) => lengthDigits(um, unit))} geometry={g} />
    </>
  )
}

function Axis({ geometry: g, unit }: { geometry: GaugeGeometry; unit: LengthUnit }) {
  return (
    <g className={classes.axis}>
      <path d={`M${g.axisX} ${g.top}V${g.bottom}`} />
      {g.ticks.map(({ y, label }) => (
        <g key={label}>
          <path d={`M${g.axisX - 5} ${y}H${g.axisX}`} />
          <text x={g.axisX - 9} y={y} textAnchor="end" dominantBaseline="central">
            {label}
          </text>
        </g>
      ))}
      <text x={g.axisX - 9} y="10" textAnchor="end">
        {lengthUnits[unit].symbol}
      </text>
    </g>
  )
}

/** A dimension line from the mean to the near edge of the window. */
function ToGo({ geometry: g, toGo }: { geometry: GaugeGeometry; toGo: NonNullable<GaugeGeometry['toGo']> }) {
  const x = g.plotRight - 18
  const down = toGo.toY > toGo.fromY
  const head = down ? -7 : 7
  return (
    <g className={classes.toGo} data-way={down ? 'on' : 'back'}>
      <path d={`M${x} ${toGo.fromY}V${toGo.toY}`} />
      <path d={`M${x} ${toGo.toY}l-3.5 ${head}h7Z`} className={classes.arrow} />
    </g>
  )
}

/** Points beyond the end of the scale. */
function OffScaleArrow({ x, y, up }: { x: number; y: number; up: boolean }) {
  const way = up ? -1 : 1
  return <path d={`M${x - 4.5} ${y + 7 * way}h9l-4.5 ${7 * way}Z`} className={classes.off} />
}
