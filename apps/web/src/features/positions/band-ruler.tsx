import { VerdictShape, type Verdict } from '../../ui/verdict-mark.tsx'
import classes from './band-ruler.module.css'

interface BandRulerProps {
  minUm: number
  maxUm: number
  /** What the mount finished at; absent where only the band is shown. */
  reductionUm?: number | undefined
  verdict?: Verdict | undefined
}

const width = 240
const markRoom = 8

/** A reduction against its band, as a mark on a ruler that starts at none. The words beside it say the same. */
export function BandRuler({ minUm, maxUm, reductionUm, verdict }: BandRulerProps) {
  const endUm = Math.max(maxUm * 1.35, (reductionUm ?? 0) * 1.1, 1)
  const x = (um: number) => markRoom + (Math.min(endUm, Math.max(0, um)) / endUm) * (width - 2 * markRoom)
  return (
    <svg viewBox={`0 0 ${width} 24`} className={classes.ruler} aria-hidden="true" focusable="false">
      <path d={`M${markRoom} 18H${width - markRoom}`} className={classes.line} />
      <rect x={x(minUm)} y="4" width={Math.max(2, x(maxUm) - x(minUm))} height="14" className={classes.band} />
      <path d={`M${x(minUm)} 2V22M${x(maxUm)} 2V22`} className={classes.limit} />
      <path d={`M${markRoom} 14V22`} className={classes.limit} />
      {reductionUm !== undefined && verdict !== undefined && (
        <g transform={`translate(${x(reductionUm)} 11)`}>
          <VerdictShape verdict={verdict} r={5.5} />
        </g>
      )}
    </svg>
  )
}
