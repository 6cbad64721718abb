import { capBolts, type CapBolts } from '@shaftbook/bearing/cap-bolts'
import { torqueCounts } from '@shaftbook/bearing/bolts'
import { InputError } from '@shaftbook/bearing/input-error'
import { OutcomeLine } from '../outcome-line.tsx'
import { useSheet } from '../sheet-context.ts'
import { SheetChoice, SheetNumber, SheetText } from '../sheet-fields.tsx'
import { numberOf } from '../sheet-numbers.ts'
import type { Sheet } from '../sheet.ts'
import { FieldPair } from '../step-part.tsx'
import { WorkCaution } from '../work-caution.tsx'
import classes from '../sheet.module.css'

/** The cap on its own base, its bolts crosswise in three steps. R-BOLT. */
export function StepCap() {
  const { sheet } = useSheet()
  const target = boltTarget(sheet)
  return (
    <>
      <WorkCaution title="Fingers under the cap">
        Lower it with the lifting gear, hands off the joint faces.
      </WorkCaution>
      <div className={classes.fields}>
        <SheetChoice
          at="marksMatch"
          legend="Cap on its own base, marks and dowels meet, right way round"
          layout="line"
          choices={[
            { value: 'yes', label: 'Yes' },
            { value: 'no', label: 'No' },
          ]}
        />
        <FieldPair>
          <SheetText at="boltSize" label="Bolt size" description="Such as M16" />
          <SheetText at="boltClass" label="Property class" description="On the head: 8.8" />
        </FieldPair>
        <SheetChoice
          at="boltFriction"
          legend="Threads"
          layout="line"
          choices={[
            { value: 'dry', label: 'Dry' },
            { value: 'light-oil', label: 'Oiled' },
            { value: 'moly-paste', label: 'Paste' },
          ]}
        />
        <SheetNumber at="boltTargetNm" label="Housing maker's torque" description="It wins over the formula" />
        <TargetAnswer target={target} />
        <BoltSteps target={target} />
        <SheetNumber at="capBoltTorqueNm" label="Bolts tightened to" />
        <TorqueAnswer target={target} />
      </div>
    </>
  )
}

const states = { dry: 'dry', 'light-oil': 'oiled', 'moly-paste': 'moly' } as const

/** The torque to reach, from the maker or by the formula; null while too little is told. */
function boltTarget(sheet: Sheet): CapBolts | { sentence: string } | null {
  const { boltSize, boltClass, boltFriction } = sheet
  const makerNm = numberOf(sheet, 'boltTargetNm')
  const known = boltSize.trim() !== '' && boltClass.trim() !== '' && boltFriction !== ''
  if (!known && makerNm === null) return null
  try {
    const state = states[boltFriction === '' ? 'dry' : boltFriction]
    const found = capBolts({ size: boltSize.toUpperCase(), propertyClass: boltClass, state, makerNm })
    return found.found ? found : { sentence: found.reason }
  } catch (error) {
    if (error instanceof InputError) return { sentence: error.message }
    throw error
  }
}

type Target = ReturnType<typeof boltTarget>

function TargetAnswer({ target }: { target: Target }) {
  return (
    <output className={classes.answer}>
      {target && 'sentence' in target && (
        <OutcomeLine outcome="warning" name="No torque" word="">
          {target.sentence} Enter the housing maker's figure.
        </OutcomeLine>
      )}
      {target && 'torqueNm' in target && (
        <div>
          <p>
            Torque to reach: <strong>{Math.round(target.torqueNm)} N·m</strong>
          </p>
          {target.cautions.map((sentence) => (
            <p key={sentence} className={classes.hint}>
              {sentence}
            </p>
          ))}
        </div>
      )}
    </output>
  )
}

/** Crosswise at 30, 60 and 100 %; each is ticked as it is done. */
function BoltSteps({ target }: { target: Target }) {
  const { sheet, change } = useSheet()
  const toggle = (percent: number, done: boolean): void => {
    const others = sheet.boltStepsDone.filter((each) => each !== percent)
    change({ boltStepsDone: (done ? [...others, percent] : others).toSorted((a, b) => a - b) })
  }
  return (
    <fieldset className={classes.grid}>
      <legend className={classes.label}>Crosswise, in three steps</legend>
      <div className={classes.boltSteps}>
        {[30, 60, 100].map((percent, at) => (
          <label key={percent} className={classes.tickBox}>
            <input
              type="checkbox"
              checked={sheet.boltStepsDone.includes(percent)}
              onChange={(event) => toggle(percent, event.currentTarget.checked)}
            />
            <span>
              {percent} %{target && 'stepsNm' in target && <small>{Math.round(target.stepsNm[at] ?? 0)} N·m</small>}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}

function TorqueAnswer({ target }: { target: Target }) {
  const { sheet } = useSheet()
  const reachedNm = numberOf(sheet, 'capBoltTorqueNm')
  if (reachedNm === null || !target || !('torqueNm' in target) || reachedNm > 20_000) return null
  const counts = torqueCounts(reachedNm, target)
  return (
    <OutcomeLine outcome={counts ? 'pass' : 'warning'} name="Torque" rule="R-BOLT">
      {counts
        ? 'Within 5 % of the torque to reach.'
        : `${Math.round(target.fromNm)} to ${Math.round(target.toNm)} N·m is within 5 % of the torque to reach.`}
    </OutcomeLine>
  )
}
