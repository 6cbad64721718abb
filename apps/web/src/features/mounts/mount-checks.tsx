import { checkSentence } from '@shaftbook/contract/mount-checks'
import type { Check } from '@shaftbook/contract/judgement'
import { useUnits } from '../../lib/units.tsx'
import classes from './mount-record.module.css'

const outcomes = {
  pass: { word: 'Holds', path: 'M2.5 6.5l2.5 2.5 5-6' },
  fail: { word: 'Fails', path: 'M2.5 2.5l7 7M9.5 2.5l-7 7' },
  warning: { word: 'Look at it', path: 'M6 1.5l5 9H1ZM6 5v2.4' },
  'not-proven': { word: 'Not proven', path: 'M6 1l5 5-5 5-5-5Z' },
  'not-done': { word: 'Not done', path: 'M2.5 6h7' },
} as const

/** What was checked, with the outcome as shape and word, and the sentence behind it. */
export function MountChecks({ checks }: { checks: readonly Check[] }) {
  const { length } = useUnits()
  if (checks.length === 0) return <p className={classes.soft}>Nothing could be checked.</p>
  return (
    <ul className={classes.checks}>
      {checks.map((check) => (
        <li key={check.rule + check.name} data-outcome={check.outcome}>
          <svg viewBox="0 0 12 12" width="14" height="14" aria-hidden="true">
            <path d={outcomes[check.outcome].path} />
          </svg>
          <span>
            <span className={classes.checkHead}>
              <strong>{check.name}</strong>
              <span className={classes.outcome}>{outcomes[check.outcome].word}</span>
              <span className={classes.rule}>{check.rule}</span>
            </span>
            {checkSentence(check, length)}
          </span>
        </li>
      ))}
    </ul>
  )
}
