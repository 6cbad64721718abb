import type { EndKind } from '@shaftbook/contract/removals'
import { failureModes } from '../../../lib/failure-modes.ts'
import { useSite } from '../../../session/site-access.tsx'
import { Caution } from '../../../ui/caution.tsx'
import type { Choice } from '../../../ui/choice-field.tsx'
import { ModeTree } from '../../../ui/mode-tree.tsx'
import { Timestamp } from '../../../ui/timestamp.tsx'
import { ReadingEntry } from '../reading-entry.tsx'
import { useSheet } from '../sheet-context.ts'
import { SheetChoice, SheetNote, SheetText } from '../sheet-fields.tsx'
import { useSlots } from '../sheet-slots.ts'
import { FieldPair, StepPart } from '../step-part.tsx'
import classes from '../sheet.module.css'

const endKinds: readonly Choice<EndKind>[] = [
  { value: 'failed', label: 'Failed', hint: 'it lost its function, or its condition forced the change' },
  { value: 'not-failed', label: 'Removed, not failed', hint: 'planned, moved, or changed with its neighbour' },
  { value: 'lost', label: 'Lost', hint: 'nobody can say any more' },
]

/** What is seen before anything is cleaned, and how the old bearing ended. */
export function StepStrip() {
  const { place, scope } = useSheet()
  const { photos } = useSlots()
  const { fitment } = place
  const { site } = useSite()
  if (!fitment) return null
  return (
    <>
      <p className={classes.hint}>
        In there now: {fitment.designation}
        {fitment.serial && `, serial ${fitment.serial}`}, fitted{' '}
        <Timestamp at={fitment.fittedAt} timeZone={site.timeZone} dateOnly />. Look first, clean later.
      </p>
      <StepPart title="As found">
        <SheetChoice
          at="foundRingCount"
          legend="Locating rings in the housing"
          layout="line"
          choices={[
            { value: '0', label: 'None' },
            { value: '1', label: 'One' },
            { value: '2', label: 'Two' },
          ]}
        />
        {scope.nut && (
          <SheetText at="foundNutSide" label="Which side was the nut?" description="Drive side, far side" />
        )}
        <SheetText at="foundSeals" label="Seals and lips" />
        <SheetText at="foundGrease" label="Grease: colour, how much, how hard" />
        {scope.clearance && (
          <div>
            <p className={classes.label}>Clearance as found, where a blade goes in</p>
            <ReadingEntry moment="found" />
          </div>
        )}
        <SheetNote at="foundNote" label="Anything else" description="Housing number, heat marks, noise before" />
        {photos?.('strip')}
      </StepPart>
      <Caution title="Splinters, and a bearing that jumps off its taper">
        Never strike a hardened ring or nut, never through the rollers: soft drift, eye and face protection.
        {scope.nut && ' Back the nut off by three to four turns and leave it on until the taper has broken loose.'}{' '}
        Stand clear of the axis, and out of the way of oil under pressure.
      </Caution>
      <OldBearing />
    </>
  )
}

function OldBearing() {
  const { sheet, change, faultOf } = useSheet()
  const failed = sheet.endKind === 'failed'
  return (
    <StepPart
      title="The bearing that comes out"
      hint="Keep it, labelled with position and side, until it was looked at."
    >
      <SheetChoice at="endKind" legend="How did it end?" choices={endKinds} />
      {failed && (
        <ModeTree
          legend="What do you see? Look before cleaning"
          nodes={failureModes}
          value={sheet.modeClause}
          onChange={(modeClause) => change({ modeClause })}
          error={faultOf('modeClause')}
        />
      )}
      {failed && (
        <FieldPair>
          <SheetText at="cause" label="Cause, if known" />
          <SheetText at="detection" label="How was it noticed?" description="Noise, heat, vibration round, stop" />
        </FieldPair>
      )}
      <SheetNote
        at="evidence"
        label="What was found"
        description="Rollers, raceways, cage, rings; grease sample taken"
      />
      <SheetText at="observer" label="Looked at by" required />
    </StepPart>
  )
}
