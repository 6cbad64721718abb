import { useUnits } from '../../lib/units.tsx'
import { ClearanceGauge } from '../../ui/clearance-gauge.tsx'
import { VerdictMark } from '../../ui/verdict-mark.tsx'
import { BandSource } from './band-source.tsx'
import { useSheet } from './sheet-context.ts'
import { verdictSentence } from './verdict-sentence.ts'
import classes from './sheet.module.css'

/** The gauge as the readings come, or once the driving is over as it stands, the verdict as it stands, and where the band is from. */
export function SheetGauge({ past = false }: { past?: boolean }) {
  const { judged, limits, type } = useSheet()
  const { length } = useUnits()
  return (
    <div>
      <ClearanceGauge
        {...judged.gauge}
        past={past}
        classLabel={type.clearanceClass}
        bandSource={limits.band?.source.title}
      >
        <SheetVerdict />
      </ClearanceGauge>
      {limits.band ? <BandSource source={limits.band.source} /> : <p className={classes.hint}>{limits.noBand}</p>}
      {limits.residualMinimum && (
        <p className={classes.hint}>
          At least {length(limits.residualMinimum.minUm)} of clearance must be left (
          {limits.residualMinimum.source.title}).
        </p>
      )}
    </div>
  )
}

/** The verdict as the mounted readings stand. */
export function SheetVerdict() {
  const { judged } = useSheet()
  const { unit, length } = useUnits()
  const { judgement, openQuestions } = judged
  if (openQuestions > 0) return <p>Answer the question at the unlikely reading first.</p>
  const sentence = judgement && verdictSentence(judgement, unit)
  if (!judgement?.verdict || !sentence) return null
  const { verdict, residual, expandedUncertaintyUm } = judgement
  return (
    <div className={classes.verdict}>
      <VerdictMark verdict={verdict} size="l" />
      <p>{sentence}</p>
      {expandedUncertaintyUm !== null && (
        <p className={classes.hint}>The gauge is good to ± {length(expandedUncertaintyUm)}.</p>
      )}
      {residual && residual !== 'no-minimum' && (
        <VerdictMark verdict={residual} about="Residual" size={residual === 'enough' ? 's' : 'l'} />
      )}
    </div>
  )
}

/** What the formulas have to say beside the verdict. */
export function SheetCautions() {
  const { judged } = useSheet()
  const cautions = judged.judgement?.cautions ?? []
  if (cautions.length === 0) return null
  return (
    <ul className={classes.cautions} aria-label="What to look at">
      {cautions.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  )
}
