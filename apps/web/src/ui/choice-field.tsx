import { useId, type ReactNode } from 'react'
import classes from './choice-field.module.css'

export interface Choice<Value extends string> {
  value: Value
  label: ReactNode
  /** What it means, in few words. */
  hint?: ReactNode
}

interface ChoiceFieldProps<Value extends string> {
  legend: string
  choices: readonly Choice<Value>[]
  /** The value that is none of the choices stands for "nothing chosen yet". */
  value: Value | ''
  onChange: (value: Value) => void
  description?: ReactNode
  error?: ReactNode
  /** Side by side, where the words are short. */
  layout?: 'rows' | 'line'
}

/** One of a few choices, each a line of its own that a thumb in a glove finds. */
export function ChoiceField<Value extends string>(props: ChoiceFieldProps<Value>) {
  const { legend, choices, value, onChange, description, error, layout = 'rows' } = props
  const name = useId()
  const notesId = useId()
  return (
    <fieldset
      className={classes.field}
      data-invalid={error ? true : undefined}
      aria-describedby={error || description ? notesId : undefined}
    >
      <legend className={classes.legend}>{legend}</legend>
      <div className={classes.choices} data-layout={layout}>
        {choices.map((choice) => (
          <label key={choice.value} className={classes.choice}>
            <input
              type="radio"
              name={name}
              value={choice.value}
              checked={value === choice.value}
              onChange={() => onChange(choice.value)}
            />
            <span>
              <span className={classes.label}>{choice.label}</span>
              {choice.hint && <span className={classes.hint}>{choice.hint}</span>}
            </span>
          </label>
        ))}
      </div>
      <div id={notesId}>
        {description && <p className={classes.description}>{description}</p>}
        {error && <p className={classes.error}>{error}</p>}
      </div>
    </fieldset>
  )
}
