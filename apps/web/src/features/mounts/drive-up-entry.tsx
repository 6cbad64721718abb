import { TextInput } from '@mantine/core'
import { useId, type Ref } from 'react'
import { lengthUnits, type LengthUnit } from '../../lib/length-units.ts'
import { NumberField } from '../../ui/number-field.tsx'
import { answerTo } from './drive-up-state.ts'
import { QuestionedReading } from './questioned-reading.tsx'
import { rowNumbers, typedFault } from './sheet-numbers.ts'
import { isOpenQuestion, ownQuestion, type ReadingAnswer } from './sheet-readings.ts'
import type { TypedReading, TypedStep } from './sheet.ts'
import classes from './drive-up-guide.module.css'

interface DriveUpEntryProps {
  step: TypedStep
  /** Counted from 1. */
  number: number
  unit: LengthUnit
  boreMm: number
  firstField: Ref<HTMLInputElement>
  onStep: (step: TypedStep) => void
  /** The row that is being typed in; null when that ends. */
  onTyping: (row: 'A' | 'B' | null) => void
}

/** The readings of one step, row A beside row B, and how far ring and nut have come, where that was measured. */
export function DriveUpEntry({ step, number, unit, boreMm, firstField, onStep, onTyping }: DriveUpEntryProps) {
  const headingId = useId()
  const put = (row: 'A' | 'B', typed: TypedReading): void => onStep({ ...step, pair: { ...step.pair, [row]: typed } })
  const fields = (['A', 'B'] as const).map((row) => ({
    row,
    typed: step.pair[row],
    answer: answerTo(step.pair[row], unit, boreMm),
  }))

  return (
    <section className={classes.entry} aria-labelledby={headingId}>
      <h4 id={headingId} className={classes.stepTitle}>
        Step {number}
        <span className={classes.soft}> clearance in {lengthUnits[unit].name}</span>
      </h4>
      <div className={classes.pair}>
        {fields.map(({ row, typed, answer }) => (
          <StepReading
            key={row}
            row={row}
            typed={typed}
            answer={answer}
            symbol={lengthUnits[unit].symbol}
            field={row === 'A' ? firstField : null}
            onType={(text) => put(row, { text, meant: false })}
            onTyping={onTyping}
          />
        ))}
      </div>
      {fields.map(({ row, typed, answer }) => {
        const question = answer && ownQuestion({ answer }, unit)
        return (
          question && (
            <QuestionedReading
              key={row}
              row={row}
              text={typed.text.trim()}
              unit={unit}
              question={question}
              answered={typed.meant}
              onText={(text) => put(row, { text, meant: false })}
              onMeant={(meant) => put(row, { text: typed.text, meant })}
            />
          )
        )
      })}
      <div className={classes.pair}>
        <NumberField
          size="touch"
          label="Travel from zero"
          text={step.driveUpMm}
          unit="mm"
          error={typedFault(step.driveUpMm, rowNumbers.driveUpMm)}
          onText={(driveUpMm) => onStep({ ...step, driveUpMm })}
        />
        <NumberField
          size="touch"
          label="Nut from zero"
          text={step.nutAngleDeg}
          unit="°"
          error={typedFault(step.nutAngleDeg, rowNumbers.nutAngleDeg)}
          onText={(nutAngleDeg) => onStep({ ...step, nutAngleDeg })}
        />
      </div>
    </section>
  )
}

interface StepReadingProps {
  row: 'A' | 'B'
  typed: TypedReading
  answer: ReadingAnswer | null
  symbol: string
  field: Ref<HTMLInputElement>
  onType: (text: string) => void
  onTyping: DriveUpEntryProps['onTyping']
}

function StepReading({ row, typed, answer, symbol, field, onType, onTyping }: StepReadingProps) {
  const refused = answer?.kind === 'refused' ? answer.sentence : undefined
  const open = answer !== null && isOpenQuestion({ answer, meant: typed.meant })
  return (
    <TextInput
      ref={field}
      label={`Row ${row}`}
      size="touch"
      value={typed.text}
      error={refused ?? open}
      onChange={(event) => onType(event.currentTarget.value)}
      onFocus={() => onTyping(row)}
      onBlur={() => onTyping(null)}
      inputMode="decimal"
      autoComplete="off"
      enterKeyHint="next"
      rightSection={<span className={classes.unit}>{symbol}</span>}
      rightSectionWidth={52}
      rightSectionPointerEvents="none"
      classNames={{ input: classes.reading }}
    />
  )
}
