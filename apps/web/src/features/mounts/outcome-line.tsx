import type { Check } from '@shaftbook/contract/judgement'
import type { ReactNode } from 'react'
import classes from './outcome-line.module.css'

const outcomes = {
  pass: { word: 'Holds', path: 'M2.5 6.5l2.5 2.5 5-6' },
  fail: { word: 'Fails', path: 'M2.5 2.5l7 7M9.5 2.5l-7 7' },
  warning: { word: 'Look at it', path: 'M6 1.5l5 9H1ZM6 5v2.4' },
  'not-proven': { word: 'Not proven', path: 'M6 1l5 5-5 5-5-5Z' },
  'not-done': { word: 'Not done', path: 'M2.5 6h7' },
} as const

interface OutcomeLineProps {
  outcome: Check['outcome']
  /** What was checked. */
  name: string
  /** The outcome in a better word for this check: "Inside h9". */
  word?: string
  rule?: string
  children?: ReactNode
}

/** One check: its outcome as shape and word, and the sentence behind it. */
export function OutcomeLine({ outcome, name, word, rule, children }: OutcomeLineProps) {
  return (
    <div className={classes.line} data-outcome={outcome}>
      <svg viewBox="0 0 12 12" width="14" height="14" aria-hidden="true">
        <path d={outcomes[outcome].path} />
      </svg>
      <div>
        <p className={classes.head}>
          <strong>{name}</strong>
          <span className={classes.outcome}>{word ?? outcomes[outcome].word}</span>
          {rule && <span className={classes.rule}>{rule}</span>}
        </p>
        {children}
      </div>
    </div>
  )
}
