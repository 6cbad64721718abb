import { checkSentence } from '@shaftbook/contract/mount-checks'
import type { Check } from '@shaftbook/contract/judgement'
import { useUnits } from '../../lib/units.tsx'
import classes from './mount-record.module.css'
import { OutcomeLine } from './outcome-line.tsx'

/** What was checked, with the outcome as shape and word, and the sentence behind it. */
export function MountChecks({ checks }: { checks: readonly Check[] }) {
  const { length } = useUnits()
  if (checks.length === 0) return <p className={classes.soft}>Nothing could be checked.</p>
  return (
    <ul className={classes.checks}>
      {checks.map((check) => (
        <li key={check.rule + check.name}>
          <OutcomeLine outcome={check.outcome} name={check.name} rule={check.rule}>
            {checkSentence(check, length)}
          </OutcomeLine>
        </li>
      ))}
    </ul>
  )
}
