import { Button } from '@mantine/core'
import { NumberField } from '../../../ui/number-field.tsx'
import { OutcomeLine } from '../outcome-line.tsx'
import { useSheet } from '../sheet-context.ts'
import { SheetChoice, SheetNote, SheetNumber, SheetText } from '../sheet-fields.tsx'
import { rowNumbers, typedFault } from '../sheet-numbers.ts'
import { startAnswers } from '../sheet-start.ts'
import { emptyStartReading, type TypedStartReading } from '../sheet.ts'
import { StepPart } from '../step-part.tsx'
import { WorkCaution } from '../work-caution.tsx'
import classes from '../sheet.module.css'

/** The first run: it rises, settles and usually falls. It may come later, with a reason. */
export function StepStart() {
  const { sheet } = useSheet()
  const begun = sheet.startReadings.length > 0
  return (
    <>
      <WorkCaution title="The machine is given back to those who run it">
        Locks come off by the site's own procedure, guards are on, everybody is clear. Stop it where it grinds, knocks
        or grows hot quickly.
      </WorkCaution>
      {begun && <FirstRun />}
      <div className={classes.fields}>
        <AddReading />
        {!begun && (
          <SheetText
            at="startLaterReason"
            label="Or why it comes later"
            description="The line starts on Monday; the operator reads it"
          />
        )}
      </div>
      {begun && <AfterRun />}
    </>
  )
}

function FirstRun() {
  const { sheet, change, faultOf } = useSheet()
  const put = (at: number, part: Partial<TypedStartReading>): void =>
    change({ startReadings: sheet.startReadings.map((each, index) => (index === at ? { ...each, ...part } : each)) })
  return (
    <StepPart title="First run" hint="Every ten minutes for half an hour to an hour. An alarm above about 90 °C.">
      <SheetText at="startedAt" label="Started at" type="datetime-local" />
      {sheet.startReadings.map((typed, at) => (
        <fieldset key={at} className={classes.grid}>
          <legend className={classes.label}>Reading {at + 1}</legend>
          <div className={classes.triple}>
            {fields.map(({ field, label }) => (
              <NumberField
                key={field}
                size="touch"
                label={label}
                unit={rowNumbers[field].unit}
                text={typed[field]}
                onText={(text) => put(at, { [field]: text })}
                error={faultOf(`startReadings.${at}.${field}`) ?? typedFault(typed[field], rowNumbers[field])}
              />
            ))}
          </div>
        </fieldset>
      ))}
      <output className={classes.answer}>
        {startAnswers(sheet).map(({ outcome, name, sentence }) => (
          <OutcomeLine key={name} outcome={outcome} name={name}>
            {sentence}
          </OutcomeLine>
        ))}
      </output>
    </StepPart>
  )
}

const fields = [
  { field: 'minutes', label: 'After' },
  { field: 'temperatureC', label: 'Housing' },
  { field: 'vibrationMmS', label: 'Vibration' },
] as const

function AddReading() {
  const { sheet, change } = useSheet()
  const { startReadings } = sheet
  return (
    <Button
      variant="default"
      size="touch"
      disabled={startReadings.length >= 20}
      onClick={() => change({ startReadings: [...startReadings, emptyStartReading()], startLaterReason: '' })}
    >
      {startReadings.length === 0 ? 'Enter the first run' : 'Add a reading'}
    </Button>
  )
}

function AfterRun() {
  const { scope } = useSheet()
  return (
    <StepPart title="After it">
      <SheetNumber at="twinTemperatureC" label="The same bearing on the twin machine" />
      <SheetChoice
        at="zone"
        legend="Vibration zone by ISO 20816 for this machine"
        layout="line"
        choices={(['A', 'B', 'C', 'D'] as const).map((zone) => ({ value: zone, label: zone }))}
        description="A as new, B for long running, C not for long, D it does harm"
      />
      {scope.nut && (
        <SheetChoice
          at="lockChecked"
          legend="Nut lock and bolts looked at after the first stop"
          layout="line"
          choices={[
            { value: 'yes', label: 'Yes' },
            { value: 'no', label: 'Not yet' },
          ]}
        />
      )}
      <SheetNote at="startNote" label="Remark" />
    </StepPart>
  )
}
