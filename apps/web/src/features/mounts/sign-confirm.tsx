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
  const { sheet, scope, place, type, judged } = useSheet()
  const { unit } = useUnits()
  const { judgement } = judged
  const sentence = judgement && verdictSentence(judgement, unit)
  const correction = scope.purpose === 'correction'
  const filled = [sheet.greaseBearingG, sheet.greaseHousingG].some((text) => text.trim() !== '')
  return (
    <Confirm
      opened={opened}
      title={correction ? 'Sign this correction?' : `Sign the mount at ${place.position.tag}?`}
      confirmLabel="Sign"
      busy={busy}
      onConfirm={onConfirm}
      onCancel={onCancel}
    >
      {judgement?.verdict && sentence && (
        <div className={classes.verdict}>
          <VerdictMark verdict={judgement.verdict} size="l" />
          <p>{sentence}</p>
          {(judgement.residual === 'too-small' || judgement.residual === 'not-proven') && (
            <VerdictMark verdict={judgement.residual} about="Residual" size="l" />
          )}
        </div>
      )}
      <ul className={classes.consequences}>
        {correction && <li>The record before stays readable; this one counts from now on.</li>}
        {!correction && place.fitment && (
          <li>The stay of the old bearing ends: {bearingName(place.fitment.designation, place.fitment.serial)}.</li>
        )}
        {!correction && <li>The stay of the new bearing begins: {bearingName(type.designation, sheet.serial)}.</li>}
        <li>
          {judged.needsReason
            ? 'A flag tells the engineer that the mount is not proven inside its limits.'
            : 'Flags about the mount that was here before are cleared.'}
        </li>
        {!correction && !filled && place.plan && (
          <li>No grease is entered: the position counts as never greased until a greasing is logged.</li>
        )}
        <li>A signed record never changes: what is wrong is corrected by a further record.</li>
      </ul>
    </Confirm>
  )
}

function bearingName(designation: string, serial: string | null): string {
  return serial ? `${designation}, serial ${serial}` : designation
}
