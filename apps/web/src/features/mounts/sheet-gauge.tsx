import { useUnits } from '../../lib/units.tsx'
import { ClearanceGauge } from '../../ui/clearance-gauge.tsx'
import { VerdictMark } from '../../ui/verdict-mark.tsx'
import { BandSource } from './band-source.tsx'
import { useSheet } from './sheet-context.ts'
import { verdictSentence } from './verdict-sentence.ts'
import classes from './sheet.module.css'

/** The gauge as the readings come, the verdict as it stands, and where the band is from. */
export function SheetGauge({ size }: { size: 'phone' | 'panel' }) {
  const { judged, limits, type } = useSheet()
  const { length } = useUnits()
  return (
    <div>
      <ClearanceGauge
        {...judged.gauge}
        size={size}
        classLabel={type.clearanceClass}
        bandSource={limits.band?.source.title}
      >
        <SheetVerdict />
      </ClearanceGauge>
      {limits.band ? <BandSource source={limits.band.source} /> : <p className={classes.hint}>{limits.noBand}</p>}
      {limits.residual && (
        <p className={classes.hint}>
          At least {length(limits.residual.minUm)} of clearance must be left ({limits.residual.source.title}).
        </p>
      )}
    </div>
  )
}

function SheetVerdict() {
  const { judged } = useSheet()
  const { unit, length } = useUnits()
  const { result, openQuestions } = judged
  if (openQuestions > 0) return <p>Answer the question at the unlikely reading first.</p>
  if (!result) return null
  const { reduction, residual } = result
  return (
    <div className={classes.verdict}>
      <VerdictMark verdict={reduction.verdict} size="l" />
      <p>{verdictSentence(reduction, unit)}</p>
      <p className={classes.hint}>The gauge is good to ± {length(reduction.expandedUm)}.</p>
      {residual.verdict !== 'no-minimum' && <VerdictMark verdict={residual.verdict} about="Residual" size="s" />}
    </div>
  )
}

/** What the formulas have to say beside the verdict. */
export function SheetCautions() {
  const { judged } = useSheet()
  const cautions = judged.result?.cautions ?? []
  if (cautions.length === 0) return null
  return (
    <ul className={classes.cautions} aria-label="What to look at">
      {cautions.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  )
}
