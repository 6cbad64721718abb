import { Button } from '@mantine/core'
import { lengthUnits, type LengthUnit } from '../../lib/length-units.ts'
import type { ReadingQuestion } from './sheet-readings.ts'
import classes from './sheet.module.css'

interface QuestionedReadingProps {
  row: 'A' | 'B'
  /** As typed, and the unit that it was typed in. */
  text: string
  unit: LengthUnit
  question: ReadingQuestion
  /** It was said that the reading is meant. */
  answered: boolean
  onText: (text: string) => void
  onMeant: (meant: boolean) => void
}

/** Asks about an unlikely reading at once, offers what may have been meant, and takes a yes. */
export function QuestionedReading(props: QuestionedReadingProps) {
  const { row, text, unit, question, answered, onText, onMeant } = props
  const { sentence, offers, refused = false } = question
  const shown = `${text} ${lengthUnits[unit].symbol}`
  if (answered && !refused)
    return (
      <p className={classes.meant}>
        Row {row}: {shown} is unlikely, and you said that it is meant.
        <button type="button" className={classes.linkButton} onClick={() => onMeant(false)}>
          Ask again
        </button>
      </p>
    )
  return (
    <div className={classes.question} role="alert">
      <p>
        <strong>Row {row}.</strong> {sentence}
      </p>
      <div className={classes.answers}>
        {offers.map(({ label, text: offered }) => (
          <Button key={label} variant="default" size="touch" onClick={() => onText(offered)}>
            {label}
          </Button>
        ))}
        {!refused && (
          <Button variant="outline" size="touch" onClick={() => onMeant(true)}>
            Yes, {shown} is meant
          </Button>
        )}
      </div>
    </div>
  )
}
