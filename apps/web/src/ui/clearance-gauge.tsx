import { useElementSize } from '@mantine/hooks'
import { useId, type ReactNode } from 'react'
import { lengthUnits } from '../lib/length-units.ts'
import { useUnits } from '../lib/units.tsx'
import { GaugeDrawing } from './clearance-gauge-drawing.tsx'
import { gaugeGeometry, type GaugeInput } from './clearance-gauge-geometry.ts'
import { GaugeSays, type GaugeSaying } from './clearance-gauge-says.tsx'
import { GaugeTable } from './clearance-gauge-table.tsx'
import { gaugeWords, pastGaugeWords } from './clearance-gauge-words.ts'
import classes from './clearance-gauge.module.css'

interface ClearanceGaugeProps extends GaugeInput {
  /** `panel` is the wide form, for a tablet or a desk; `hand` the large one, for gloves and bad light. */
  size?: 'phone' | 'panel' | 'hand'
  /** Clearance class, such as "C3". */
  classLabel?: string | undefined
  /** Where the band comes from: "generic guide" or the chart's name. */
  bandSource?: string | undefined
  /** The gauge as it stood when a record was kept: it says what was, not what to do. */
  past?: boolean
  /** What to say instead of the gauge's own words: the advice of a drive-up. */
  says?: GaugeSaying | undefined
  /** Its words stand elsewhere on the screen. */
  mute?: boolean
  /** Verdict or advice, shown under the sentence. */
  children?: ReactNode
}

/**
 * The clearance gauge: a vertical scale with the bench clearance, the target window, the residual minimum and every
 * reading as it comes, so that "how much further" is seen. Takes micrometres, shows the person's unit.
 */
export function ClearanceGauge(props: ClearanceGaugeProps) {
  const { size = 'phone', classLabel, bandSource, past = false, says, mute = false, children } = props
  const { unit } = useUnits()
  const { ref, width } = useElementSize<HTMLDivElement>()
  const titleId = useId()
  const words = past ? pastGaugeWords(props, unit) : gaugeWords(props, unit)
  const height = heights[size]
  const labelWidth = size === 'panel' && width > 440 ? 176 : 140
  const byStep = props.readings.some(({ step }) => step !== undefined)

  return (
    <div className={classes.box}>
      <figure className={classes.gauge} data-size={size}>
        {!mute && (
          <figcaption className={classes.says} aria-live={says ? undefined : 'polite'}>
            {says ? (
              <GaugeSays saying={says} />
            ) : (
              <>
                <p className={classes.headline} data-tone={words.tone}>
                  {words.headline}
                </p>
                <p className={classes.detail}>{words.detail}</p>
              </>
            )}
            {children && <div className={classes.verdict}>{children}</div>}
          </figcaption>
        )}
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
            <span>{byStep ? 'steps left to right, older ones fainter' : 'left to right as taken'}</span>
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

const heights = { phone: 324, panel: 460, hand: 380 } as const

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
