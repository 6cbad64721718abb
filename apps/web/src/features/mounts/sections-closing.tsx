import { useSuspenseQuery } from '@tanstack/react-query'
import { useSite } from '../../session/site-access.tsx'
import { ChoiceField } from '../../ui/choice-field.tsx'
import { greasesQuery } from './mount-queries.ts'
import { useSheet } from './sheet-context.ts'
import { WorkCaution } from './work-caution.tsx'
import { SheetNote, SheetNumber, SheetSelect, SheetText } from './sheet-fields.tsx'
import { SheetPair, SheetSection } from './sheet-section.tsx'
import type { TextField } from './sheet.ts'
import classes from './sheet.module.css'

/** What holds the bearing: sleeve, nut, lock, rings, cap. */
export function PartsSection() {
  const { sheet, change, scope, faultOf } = useSheet()
  return (
    <SheetSection
      title="Locking and housing"
      hint={
        scope.nut
          ? 'Nut back to the same place, then forward to the next slot, never back. Bend one tab. Cap in its own place, crosswise in three steps.'
          : 'Cap in its own place, crosswise in three steps.'
      }
    >
      {(scope.sleeve || scope.nut) && (
        <SheetPair>
          {scope.sleeve && <PartCode at="sleeveCode" label="Sleeve" kinds={['sleeve']} />}
          {scope.nut && <PartCode at="nutCode" label="Nut" kinds={['nut']} />}
          {scope.nut && <PartCode at="lockingCode" label="Washer or clip, new" kinds={['washer', 'clip']} />}
        </SheetPair>
      )}
      {scope.rings ? (
        <SheetPair>
          <ChoiceField
            legend="Locating rings"
            layout="line"
            choices={[
              { value: '0', label: 'None' },
              { value: '1', label: 'One' },
              { value: '2', label: 'Two' },
            ]}
            value={sheet.ringCount}
            onChange={(ringCount) => change({ ringCount })}
            error={faultOf('ringCount')}
          />
          {Number(sheet.ringCount) > 0 && <SheetNumber at="ringWidthMm" label="Width of a ring" />}
        </SheetPair>
      ) : (
        <p className={classes.hint}>Non-locating position: no rings, end play on both sides.</p>
      )}
      <SheetNumber at="capBoltTorqueNm" label="Cap bolts tightened to" />
    </SheetSection>
  )
}

/** The code of a part, with what the kit of the position says one tap away. */
function PartCode({ at, label, kinds }: { at: TextField; label: string; kinds: readonly string[] }) {
  const { place, sheet, change } = useSheet()
  const line = place.kit?.lines.find(({ kind }) => kinds.includes(kind))
  return (
    <div>
      <SheetText at={at} label={label} />
      {line && sheet[at].trim() === '' && (
        <button type="button" className={classes.linkButton} onClick={() => change({ [at]: line.designation })}>
          {line.designation}, as in the kit
        </button>
      )}
    </div>
  )
}

/** The first fill. */
export function GreaseSection() {
  const { code } = useSite()
  const { data: greases } = useSuspenseQuery(greasesQuery(code))
  return (
    <SheetSection
      title="Grease"
      hint="The bearing itself full; the housing by its manual, usually a third of its free space."
    >
      <WorkCaution title="Never fill a housing to the top">
        A housing that is full and has no outlet runs hot. Leave the outlet free and watch the temperature in the first
        hour.
      </WorkCaution>
      <SheetSelect
        at="greaseId"
        label="Grease"
        options={[
          { value: '', label: 'Not entered' },
          ...greases.items.map(({ id, name }) => ({ value: id, label: name })),
        ]}
      />
      <SheetPair>
        <SheetNumber at="greaseBearingG" label="In the bearing" />
        <SheetNumber at="greaseHousingG" label="In the housing" />
      </SheetPair>
    </SheetSection>
  )
}

/** Turning by hand, who did it and when. */
export function CloseSection() {
  const { sheet, change, scope, judged } = useSheet()
  return (
    <SheetSection title="Close">
      <ChoiceField
        legend="Turned by hand"
        layout="line"
        choices={[
          { value: 'yes', label: 'Free, no drag' },
          { value: 'no', label: 'Not free' },
        ]}
        value={sheet.turnsFree}
        onChange={(turnsFree) => change({ turnsFree })}
      />
      {judged.needsReason && (
        <SheetNote
          at="outOfBandReason"
          label="Why does the mount stay as it is?"
          description="It is not proven inside its band. The engineer sees this reason with the flag."
          required
        />
      )}
      <SheetNote at="note" label="Note" description="Anything the next person has to know" />
      <SheetText at="mountedAt" label="Mounted at, by the clock of the plant" type="datetime-local" required />
      <SheetPair>
        <SheetText at="fitter" label="Fitted by" required />
        <SheetText at="checker" label="Checked by" />
      </SheetPair>
      {scope.purpose === 'correction' && (
        <SheetNote at="correctionReason" label="What was wrong, and how do you know?" required />
      )}
    </SheetSection>
  )
}
