import { OutcomeLine } from '../outcome-line.tsx'
import { useSheet } from '../sheet-context.ts'
import { SheetChoice, SheetNumber, SheetText } from '../sheet-fields.tsx'
import { ringPlan } from '../sheet-seat.ts'
import classes from '../sheet.module.css'

/** Locating rings where the position locates the shaft, and the seals. */
export function StepRings() {
  const { scope } = useSheet()
  return (
    <div className={classes.fields}>
      {scope.rings ? <Rings /> : <FreeEnd />}
      <SheetText at="sealsFitted" label="Seals fitted" description="Code, and which way the lips point" />
      <SheetChoice
        at="sealsTurn"
        legend="Seals sit, and do not drag"
        layout="line"
        choices={[
          { value: 'yes', label: 'Yes' },
          { value: 'no', label: 'No' },
        ]}
      />
    </div>
  )
}

function Rings() {
  const { sheet, place, type } = useSheet()
  const plan = ringPlan(sheet, place.position, type.widthMm)
  return (
    <>
      {plan ? (
        <OutcomeLine
          outcome={plan.kind === 'refused' ? 'fail' : 'pass'}
          name="By the measured seat"
          word=""
          rule="R-RING"
        >
          {plan.sentence}
        </OutcomeLine>
      ) : (
        <p className={classes.hint}>The width of a ring follows from the width of the seat: measure it.</p>
      )}
      <SheetChoice
        at="ringCount"
        legend="Locating rings put in"
        layout="line"
        choices={[
          { value: '0', label: 'None' },
          { value: '1', label: 'One' },
          { value: '2', label: 'Two' },
        ]}
      />
      {Number(sheet.ringCount) > 0 && (
        <>
          <SheetNumber at="ringWidthMm" label="Width of a ring" />
          <SheetChoice
            at="ringsPlaced"
            legend="Where are they?"
            choices={[
              { value: 'both-sides', label: 'One on each side' },
              { value: 'nut-side', label: 'On the side of the nut' },
              { value: 'far-side', label: 'On the side away from the nut' },
            ]}
          />
        </>
      )}
    </>
  )
}

/** A free end has no rings, and room to slide. */
function FreeEnd() {
  const { sheet, place, type } = useSheet()
  const plan = ringPlan(sheet, place.position, type.widthMm)
  return (
    <OutcomeLine
      outcome={plan && plan.kind !== 'none' ? 'warning' : 'not-done'}
      name="Non-locating position"
      word="No rings"
      rule="R-RING"
    >
      {plan?.sentence ?? 'The bearing has to slide: end play on both sides.'}
    </OutcomeLine>
  )
}
