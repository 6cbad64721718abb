import classes from './due-mark.module.css'

export type DueState = 'never-greased' | 'not-due' | 'due-soon' | 'due' | 'overdue' | 'missed'

const words: Record<DueState, string> = {
  'never-greased': 'Never greased',
  'not-due': 'Not due',
  'due-soon': 'Due soon',
  due: 'Due',
  overdue: 'Overdue',
  missed: 'Missed',
}

/** How much of the interval the mark shows as run down, from 0 to 1. */
const rundown: Record<DueState, number> = {
  'never-greased': 0,
  'not-due': 0.25,
  'due-soon': 0.6,
  due: 0.85,
  overdue: 1,
  missed: 1,
}

/** The state of a greasing as one word or two. */
export function dueWord(state: DueState): string {
  return words[state]
}

/** The states, the least pressing first. */
export const dueStates = ['not-due', 'due-soon', 'due', 'overdue', 'missed', 'never-greased'] as const

/** Shape and word of a due state: a column of grease that runs down. The word is always there. */
export function DueMark({ state }: { state: DueState }) {
  return (
    <span className={classes.mark} data-state={state}>
      <svg viewBox="0 0 10 16" width="10" height="16" aria-hidden="true" focusable="false">
        <rect x="1" y="1" width="8" height="14" className={classes.column} />
        {state !== 'never-greased' && (
          <rect
            x="1"
            y={1 + 14 * rundown[state]}
            width="8"
            height={14 * (1 - rundown[state])}
            className={classes.grease}
          />
        )}
        {state === 'missed' && <path d="M2.5 4.5l5 7M7.5 4.5l-5 7" className={classes.cross} />}
      </svg>
      <span>{words[state]}</span>
    </span>
  )
}
