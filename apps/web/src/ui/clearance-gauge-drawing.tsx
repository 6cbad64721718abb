import { useId } from 'react'
import { lengthDigits, lengthUnits, type LengthUnit } from '../lib/length-units.ts'
import type { GaugeGeometry, GaugeInput } from './clearance-gauge-geometry.ts'
import { gaugeLabels, GaugeLabels } from './clearance-gauge-labels.tsx'
import classes from './clearance-gauge.module.css'

interface GaugeDrawingProps {
  geometry: GaugeGeometry
  input: GaugeInput
  unit: LengthUnit
  classLabel: string | undefined
}

/** Everything that is drawn of the gauge, without its words. */
export function GaugeDrawing({ geometry: g, input, unit, classLabel }: GaugeDrawingProps) {
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
      {g.aim && (
        <g className={classes.aim}>
          <rect x={g.axisX} y={g.aim.topY} width="7" height={Math.max(3, g.aim.bottomY - g.aim.topY)} />
          <path d={`M${g.axisX} ${g.aim.y}H${g.plotRight}`} />
        </g>
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
      {g.trail.length > 1 && (
        <path d={`M${g.trail.map(({ x, y }) => `${x} ${y}`).join('L')}`} className={classes.trail} />
      )}
      {g.readings.map((reading, index) => (
        <ReadingMark key={index} reading={reading} />
      ))}
      {g.mean && (
        <g className={classes.mean}>
          <path d={`M${g.plotLeft} ${g.mean.y}H${g.plotRight}`} />
          {g.mean.off && <OffScaleArrow x={g.plotRight - 10} y={g.mean.y} up={g.mean.off === 'above'} />}
        </g>
      )}
      {g.toGo && <ToGo geometry={g} toGo={g.toGo} say={(um) => lengthDigits(um, unit)} />}
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

/** Older readings fade, so that the newest stand out. */
function ReadingMark({ reading }: { reading: GaugeGeometry['readings'][number] }) {
  const { x, y, row, off, age } = reading
  return (
    <g opacity={age === 0 ? 1 : Math.max(0.25, 0.6 - age * 0.12)}>
      <rect x={x - 4} y={y - 4} width="8" height="8" className={row === 'A' ? classes.rowA : classes.rowB} />
      {off && <OffScaleArrow x={x} y={y} up={off === 'above'} />}
    </g>
  )
}

interface ToGoProps {
  geometry: GaugeGeometry
  toGo: NonNullable<GaugeGeometry['toGo']>
  say: (um: number) => string
}

/** A dimension line: an arrow from the mean to the window, or, past the window, plain: nothing leads out of there. */
function ToGo({ geometry: g, toGo, say }: ToGoProps) {
  const x = g.plotRight - 18
  const { fromY, toY } = toGo
  const on = toY > fromY
  return (
    <g className={classes.toGo} data-way={on ? 'on' : 'over'}>
      <path d={`M${x} ${fromY}V${toY}`} />
      {on ? (
        <path d={`M${x} ${toY}l-3.5 ${-Math.min(7, toY - fromY)}h7Z`} className={classes.arrow} />
      ) : (
        <path d={`M${x - 5} ${fromY}h10M${x - 5} ${toY}h10`} />
      )}
      {Math.abs(toY - fromY) >= 24 && (
        <text x={x - 7} y={(fromY + toY) / 2} textAnchor="end" dominantBaseline="central">
          {say(Math.abs(toGo.um))} {on ? 'to go' : 'too far'}
        </text>
      )}
    </g>
  )
}

/** Points beyond the end of the scale. */
function OffScaleArrow({ x, y, up }: { x: number; y: number; up: boolean }) {
  const way = up ? -1 : 1
  return <path d={`M${x - 4.5} ${y + 7 * way}h9l-4.5 ${7 * way}Z`} className={classes.off} />
}
