import { SheetGauge } from '../sheet-gauge.tsx'
import { useSheet } from '../sheet-context.ts'
import { SheetNote, SheetText } from '../sheet-fields.tsx'
import { useSlots } from '../sheet-slots.ts'
import { SignBlanks } from '../sign-blanks.tsx'
import { SignSummary } from '../sign-summary.tsx'
import { FieldPair, StepPart } from '../step-part.tsx'
import type { StepKey } from '../sheet-steps.ts'
import classes from '../sheet.module.css'

/** Everything once more before it is final: what is missing, who did it, how it came out. */
export function StepSign({ onStep }: { onStep: (step: StepKey) => void }) {
  const { scope, judged, sheet } = useSheet()
  const { photos } = useSlots()
  return (
    <>
      <StepPart title="The steps">
        <SignSummary onStep={onStep} />
      </StepPart>
      {scope.purpose !== 'correction' && <SignBlanks onStep={onStep} />}
      {scope.taper && scope.clearance && (
        <div className={classes.onPhone}>
          <StepPart title="How it came out">
            <SheetGauge past />
          </StepPart>
        </div>
      )}
      {judged.needsReason && (
        <StepPart title="Not proven inside its limits">
          <SheetNote
            at="outOfBandReason"
            label="Why does the mount stay as it is?"
            description="The engineer sees this reason with the flag, and decides: accept it until a day, or do it again."
            required
          />
        </StepPart>
      )}
      <StepPart title="People and time">
        <SheetText at="mountedAt" label="Mounted at, by the clock of the plant" type="datetime-local" required />
        <FieldPair>
          <SheetText at="fitter" label="Fitted by" required />
          <SheetText at="checker" label="Checked by" />
        </FieldPair>
        <SheetNote at="note" label="Note" description="Anything the next person has to know" />
        {photos?.('sign')}
        {sheet.method === 'by-feel' && (
          <p className={classes.hint}>By feel: judged by {sheet.byFeelPerson || 'nobody yet'}.</p>
        )}
      </StepPart>
    </>
  )
}
