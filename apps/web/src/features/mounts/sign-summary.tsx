import type { Ask } from './sheet-asks.ts'
import { useSheet } from './sheet-context.ts'
import { stepTitle, type StepKey } from './sheet-steps.ts'
import { StepMark } from './step-mark.tsx'
import { stepWords } from './step-state.ts'
import classes from './sheet.module.css'

/** Every step with its state and what it still lacks; each leads back to itself. */
export function SignSummary({ onStep }: { onStep: (step: StepKey) => void }) {
  const { scope, states, asks, sheet } = useSheet()
  const before = scope.steps.filter((step) => step !== 'sign')
  return (
    <ul className={classes.summary}>
      {before.map((step) => {
        const missing = asks.filter(
          (ask) => ask.step === step && ask.told(sheet) !== 'all' && sheet.blanks[ask.key] === undefined,
        )
        return (
          <li key={step}>
            <StepMark state={states[step]} />
            <div>
              <button type="button" className={classes.linkButton} onClick={() => onStep(step)}>
                {stepTitle(step, scope)}
              </button>
              <span className={classes.word}>{stepWords[states[step]]}</span>
              {missing.length > 0 && <p className={classes.hint}>Not told: {missingWords(missing)}.</p>}
            </div>
          </li>
        )
      })}
    </ul>
  )
}

/** What a step lacks; the lines of a kit are only counted. */
function missingWords(missing: readonly Ask[]): string {
  const kitLines = missing.filter(({ key }) => key.startsWith('kitCheck.')).length
  const named = missing
    .filter(({ key }) => !key.startsWith('kitCheck.'))
    .map(({ label }) => label.charAt(0).toLowerCase() + label.slice(1))
  return [
    ...named,
    ...(kitLines > 0 ? [kitLines === 1 ? '1 line of the kit' : `${kitLines} lines of the kit`] : []),
  ].join(', ')
}
