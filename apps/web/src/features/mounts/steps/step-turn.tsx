import { useSheet } from '../sheet-context.ts'
import { SheetChoice } from '../sheet-fields.tsx'
import { AskLine } from '../step-part.tsx'
import { WorkCaution } from '../work-caution.tsx'
import classes from '../sheet.module.css'

/** The shaft is turned by hand before anything is switched on. */
export function StepTurn() {
  const { sheet } = useSheet()
  return (
    <>
      <WorkCaution title="A shaft that is let go turns by itself">
        Locks stay on. Take the block off only with everybody clear: unbalance, belts and air flow turn the rotor.
      </WorkCaution>
      <div className={classes.fields}>
        <SheetChoice
          at="turnsFree"
          legend="Turned by hand"
          choices={[
            { value: 'yes', label: 'Free, no drag', hint: 'evenly over several turns' },
            { value: 'no', label: 'Not free', hint: 'it drags, clicks or sticks somewhere' },
          ]}
        />
        {sheet.turnsFree === 'no' && (
          <AskLine>
            Find out why before it runs: seal, ring tilted, too little clearance, cap on the wrong way round. Tell the
            engineer.
          </AskLine>
        )}
      </div>
    </>
  )
}
