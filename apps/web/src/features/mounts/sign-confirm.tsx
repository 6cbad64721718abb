import { useUnits } from '../../lib/units.tsx'
import { Confirm } from '../../ui/confirm.tsx'
import { VerdictMark } from '../../ui/verdict-mark.tsx'
import { useSheet } from './sheet-context.ts'
import { verdictSentence } from './verdict-sentence.ts'
import classes from './sheet.module.css'

interface SignConfirmProps {
  opened: boolean
  busy: boolean
  onConfirm: () => void
  onCancel: () => void
}

/** Says what signing does before it is done. */
export function SignConfirm({ opened, busy, onConfirm, onCancel }: SignConfirmProps) {
  const { scope, place, type, judged } = useSheet()
  const { unit } = useUnits()
  const { result } = judged
  const correction = scope.purpose === 'correction'
  return (
    <Confirm
      opened={opened}
      title={correction ? 'Sign this correction?' : `Sign the mount at ${place.position.tag}?`}
      confirmLabel="Sign"
      busy={busy}
      onConfirm={onConfirm}
      onCancel={onCancel}
    >
      {result && (
        <div className={classes.verdict}>
          <VerdictMark verdict={result.reduction.verdict} size="l" />
          <p>{verdictSentence(result.reduction, unit)}</p>
        </div>
      )}
      <ul className={classes.consequences}>
        {correction && <li>The record before stays readable; this one counts from now on.</li>}
        {!correction && place.fitment && <li>The stay of {place.fitment.designation} ends here.</li>}
        {!correction && <li>The stay of {type.designation} begins.</li>}
        <li>
          {result && result.reduction.verdict === 'inside' && !judged.needsReason
            ? 'Flags about the mount here are cleared.'
            : 'A flag tells the engineer what is not proven.'}
        </li>
        <li>A signed record never changes: what is wrong is corrected by a further record.</li>
      </ul>
    </Confirm>
  )
}
