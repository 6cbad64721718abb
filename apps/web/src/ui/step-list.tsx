import { Progress } from '@mantine/core'
import classes from './step-list.module.css'

export interface Step {
  key: string
  label: string
  state: 'done' | 'now' | 'to-do' | 'skipped'
  /** What was entered, or why it was left out. */
  note?: string | undefined
}

interface StepListProps {
  /** What the steps make: "Mount record". */
  label: string
  steps: readonly Step[]
  /** Goes to a step that may be opened. */
  onGo?: (key: string) => void
  /** One line with a bar instead of the list, for a phone. */
  compact?: boolean
}

const stateWords = { done: 'done', now: 'now', 'to-do': 'to do', skipped: 'left out' } as const

/** The steps of a longer job, and where one stands. */
export function StepList({ label, steps, onGo, compact = false }: StepListProps) {
  const at = Math.max(
    0,
    steps.findIndex(({ state }) => state === 'now'),
  )
  if (compact)
    return (
      <div className={classes.compact}>
        <p>
          <strong>
            Step {at + 1} of {steps.length}
          </strong>{' '}
          {steps[at]?.label}
        </p>
        <Progress
          value={((at + 1) / Math.max(1, steps.length)) * 100}
          size={4}
          aria-label={`${label}: step ${at + 1} of ${steps.length}`}
        />
      </div>
    )
  return (
    <ol className={classes.list} aria-label={label}>
      {steps.map((step, index) => (
        <li key={step.key} className={classes.step} data-state={step.state}>
          <span className={classes.number} aria-hidden="true">
            {step.state === 'done' ? '✓' : step.state === 'skipped' ? '–' : index + 1}
          </span>
          <span>
            {onGo && step.state !== 'now' && step.state !== 'to-do' ? (
              <button type="button" className={classes.go} onClick={() => onGo(step.key)}>
                {step.label}
              </button>
            ) : (
              <span aria-current={step.state === 'now' ? 'step' : undefined}>{step.label}</span>
            )}
            <span className="visually-hidden">, {stateWords[step.state]}</span>
            {step.note && <span className={classes.note}>{step.note}</span>}
          </span>
        </li>
      ))}
    </ol>
  )
}
