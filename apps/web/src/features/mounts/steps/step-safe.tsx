import { formatCount } from '../../../lib/format-count.ts'
import { useSite } from '../../../session/site-access.tsx'
import { Caution } from '../../../ui/caution.tsx'
import { HoursFields } from '../hours-fields.tsx'
import { useSheet } from '../sheet-context.ts'
import { SheetNote, SheetText } from '../sheet-fields.tsx'
import { StepPart } from '../step-part.tsx'
import classes from '../sheet.module.css'

/** Why the work is done, and what comes before the housing is opened. */
export function StepSafe() {
  const { scope, plan } = useSheet()
  if (scope.purpose === 'correction') return <CorrectedJob />
  return (
    <>
      {plan && (
        <p className={classes.planned}>
          Planned by {plan.plannedBy}
          {plan.who && `, for ${plan.who}`}
          {plan.note && `: ${plan.note}`}
        </p>
      )}
      <Caution title="Nothing may move, fall, burn or come out under pressure">
        <ul>
          <li>
            Every source of energy off, locked with your own lock, tagged and proved dead: electrical, drive torque,
            stored pressure, hot or dusty process. Try to start.
          </li>
          <li>Shaft and rotor blocked against turning and dropping: belts, air flow and unbalance turn them.</li>
          <li>Lift bearing and housing halves with rated gear.</li>
          <li>Dust and gas burn: clean first; no flame, grinding or induction heater without the permit.</li>
          <li>Never weld with the return through a bearing.</li>
        </ul>
      </Caution>
      <CautionsRead />
      <StepPart title="The job">
        <SheetText at="reason" label="Why is a bearing fitted?" description="Failure, condition, overhaul" required />
        <SheetText at="permitReference" label="Permit number" description="Isolation, hot work, dusty area" />
        <HoursFields />
      </StepPart>
    </>
  )
}

function CautionsRead() {
  const { sheet, change } = useSheet()
  const { me } = useSite()
  return (
    <label className={classes.tickBox}>
      <input
        type="checkbox"
        checked={sheet.cautionsSeenBy !== ''}
        onChange={(event) => change({ cautionsSeenBy: event.currentTarget.checked ? me.name : '' })}
      />
      <span>
        I have read this<small>{sheet.cautionsSeenBy || me.name}</small>
      </span>
    </label>
  )
}

/** A correction leaves the hours as they were signed, or tells the right ones. */
function CorrectedJob() {
  const { place, record } = useSheet()
  return (
    <>
      <div className={classes.fields}>
        <SheetNote at="correctionReason" label="What was wrong, and how do you know?" required />
        <SheetText at="reason" label="Why was a bearing fitted?" required />
        <SheetText at="permitReference" label="Permit number" />
      </div>
      {place.meter && record && (
        <StepPart title="Hour meter" hint={recordedHours(record)}>
          <HoursFields />
        </StepPart>
      )}
    </>
  )
}

function recordedHours({ runHours, noHoursReason }: { runHours: number | null; noHoursReason: string | null }): string {
  const recorded =
    runHours === null
      ? `No reading was recorded: ${noHoursReason ?? 'no reason was given'}.`
      : `Recorded: ${formatCount(runHours)} run hours.`
  return `${recorded} Leave both fields empty to keep that.`
}
