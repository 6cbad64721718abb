import { stepWords, type StepState } from './step-state.ts'
import classes from './step-list.module.css'

/** The state of a step as a shape: an empty box, a half-filled one, a full one with a tick, a box that asks. */
export function StepMark({ state }: { state: StepState }) {
  return (
    <svg viewBox="0 0 18 18" width="18" height="18" className={classes.mark} data-state={state} aria-hidden="true">
      <rect x="1.5" y="1.5" width="15" height="15" className={classes.box} />
      {state === 'begun' && <path d="M1.5 16.5V1.5L16.5 16.5Z" className={classes.half} />}
      {state === 'told' && <path d="M4.6 9.4l3 3 5.8-6.8" className={classes.line} />}
      {state === 'asks' && (
        <path d="M6.4 6.9a2.6 2.6 0 1 1 3.6 2.4c-.7.3-1 .8-1 1.5M9 13.2v.7" className={classes.line} />
      )}
    </svg>
  )
}

/** Shape and word: a state is never its colour alone. */
export function StepStateLine({ state }: { state: StepState }) {
  return (
    <span className={classes.stateLine}>
      <StepMark state={state} />
      {stepWords[state]}
    </span>
  )
}
