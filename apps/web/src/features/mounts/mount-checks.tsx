import type { Check } from '@shaftbook/contract/mounts'
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
  if (checks.length === 0) return <p className={classes.soft}>Nothing could be checked.</p>
  return (
    <ul className={classes.checks}>
      {checks.map(({ rule, name, outcome, sentence }) => (
        <li key={rule + name} data-outcome={outcome}>
          <svg viewBox="0 0 12 12" width="14" height="14" aria-hidden="true">
            <path d={outcomes[outcome].path} />
          </svg>
          <span>
            <span className={classes.checkHead}>
              <strong>{name}</strong>
              <span className={classes.outcome}>{outcomes[outcome].word}</span>
              <span className={classes.rule}>{rule}</span>
            </span>
            {sentence}
          </span>
        </li>
      ))}
    </ul>
  )
}
