import { lockStepOfNut } from '@shaftbook/bearing/nut-turn'
import { useUnits } from '../../../lib/units.tsx'
import { fittedCode } from '../kit-check.ts'
import { useSheet } from '../sheet-context.ts'
import { SheetChoice, SheetNote, SheetNumber } from '../sheet-fields.tsx'
import classes from '../sheet.module.css'

/** The nut is locked at the next slot, forward only. R-TAB. */
export function StepLock() {
  const { scope } = useSheet()
  return (
    <>
      <ol className={classes.doing}>
        <li>Take the nut off, put the new washer or clip in, nut back to the same place.</li>
        <li>Turn forward to the next slot. Never back: the taper would come loose.</li>
        <li>Bend one tab into its slot, or fit the clip. A used washer does not go in again.</li>
      </ol>
      <SlotStep />
      <div className={classes.fields}>
        <SheetNumber at="lockForwardDeg" label="Forward to the slot by" description="0 if a tab met a slot" />
        <SheetChoice
          at="lockedWith"
          legend="Locked with"
          choices={[
            { value: 'tab', label: 'Tab of the washer' },
            { value: 'clip', label: 'Clip' },
            { value: 'screw', label: 'Grub screw' },
            { value: 'other', label: 'Something else' },
          ]}
        />
        <SheetNote at="lockNote" label="Remark" description={scope.withdrawal ? 'How the sleeve is held' : undefined} />
      </div>
    </>
  )
}

/** How little a slot is, so that nobody backs off for it. */
function SlotStep() {
  const { sheet, place, type } = useSheet()
  const { length } = useUnits()
  const nut = fittedCode(sheet, place.kit, 'nutCode')
  if (nut === '' || type.taper === null) return null
  const step = lockStepOfNut(nut, null, type.taper)
  if (!step.found) return null
  return (
    <p className={classes.hint}>
      {nut}, {step.slots} slots and {step.tabs} tabs: the next slot is at most {step.stepDeg.toFixed(1)}° away, which
      takes up to {length(step.wedgeUm)} of clearance.
    </p>
  )
}
