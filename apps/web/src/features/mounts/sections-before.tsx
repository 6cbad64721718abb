import { checkShaft, inchOrMetric } from '@shaftbook/bearing/shaft'
import { InputError } from '@shaftbook/bearing/input-error'
import { ChoiceField, type Choice } from '../../ui/choice-field.tsx'
import { ModeTree } from '../../ui/mode-tree.tsx'
import type { EndKind } from '@shaftbook/contract/removals'
import { Timestamp } from '../../ui/timestamp.tsx'
import { useSite } from '../../session/site-access.tsx'
import { failureModes } from '../../lib/failure-modes.ts'
import { formatCount } from '../../lib/format-count.ts'
import { useSheet } from './sheet-context.ts'
import { WorkCaution } from './work-caution.tsx'
import { SheetNote, SheetNumber, SheetText } from './sheet-fields.tsx'
import { numberOf } from './sheet-numbers.ts'
import { SheetPair, SheetSection } from './sheet-section.tsx'
import classes from './sheet.module.css'

/** Why the work is done, and what has to be safe before it. */
export function MakeSafeSection() {
  return (
    <SheetSection title="Before the housing is opened">
      <WorkCaution title="Isolate, prove, block">
        <ul>
          <li>Every source of energy is off, locked, tagged and proved dead; try to start.</li>
          <li>Shaft and rotor are blocked: belts, air flow and unbalance turn them, and gravity drops them.</li>
          <li>Lift bearing and housing with rated gear.</li>
          <li>Dust burns: clean first; no flame, grinding or heater without the permit.</li>
        </ul>
      </WorkCaution>
      <SheetPair>
        <SheetText at="reason" label="Why is a bearing fitted?" description="Failure, condition, overhaul" required />
        <SheetText at="permitReference" label="Permit number" />
      </SheetPair>
    </SheetSection>
  )
}

const endKinds: readonly Choice<EndKind>[] = [
  { value: 'failed', label: 'Failed', hint: 'it lost its function, or its condition forced the change' },
  { value: 'not-failed', label: 'Removed, not failed', hint: 'planned, moved, or changed with its neighbour' },
  { value: 'lost', label: 'Lost', hint: 'nobody can say any more' },
]

/** The bearing that comes out, looked at before it is cleaned, and the hours it ran. */
export function OldBearingSection() {
  const { sheet, change, faultOf, scope, place } = useSheet()
  const { site } = useSite()
  const { fitment } = place
  if (scope.purpose === 'correction') return <CorrectedHoursSection />
  if (!scope.removal || !fitment)
    return (
      <SheetSection title="Hour meter" hint="Nothing is fitted at this position, so nothing comes out.">
        <HoursFields />
      </SheetSection>
    )
  return (
    <SheetSection
      title="The bearing that comes out"
      hint={
        <>
          {fitment.designation}
          {fitment.serial && `, serial ${fitment.serial}`}, fitted{' '}
          <Timestamp at={fitment.fittedAt} timeZone={site.timeZone} dateOnly />
        </>
      }
    >
      <WorkCaution title="Splinters, and a bearing that jumps">
        Never strike a hardened ring or nut: use a soft drift and eye protection. Leave the nut on by some turns while
        the taper is broken loose, and stand clear of the axis.
      </WorkCaution>
      <HoursFields />
      <ChoiceField
        legend="How did it end?"
        choices={endKinds}
        value={sheet.endKind}
        onChange={(endKind) => change({ endKind })}
        error={faultOf('endKind')}
      />
      {sheet.endKind === 'failed' && (
        <ModeTree
          legend="What do you see? Look before cleaning"
          nodes={failureModes}
          value={sheet.modeClause}
          onChange={(modeClause) => change({ modeClause })}
          error={faultOf('modeClause')}
        />
      )}
      {sheet.endKind === 'failed' && (
        <SheetPair>
          <SheetText at="cause" label="Cause, if known" />
          <SheetText at="detection" label="How was it noticed?" description="Noise, heat, vibration round, stop" />
        </SheetPair>
      )}
      <SheetNote
        at="evidence"
        label="What was found"
        description="Colour of grease, rings, seals, temperature, photo"
      />
      <SheetText at="observer" label="Looked at by" required />
    </SheetSection>
  )
}

/** The hours that were signed, and room for the right ones. */
function CorrectedHoursSection() {
  const { place, record } = useSheet()
  if (!place.meter || !record) return null
  const recorded =
    record.runHours === null
      ? `No reading was recorded: ${record.noHoursReason ?? 'no reason was given'}.`
      : `Recorded: ${formatCount(record.runHours)} run hours.`
  return (
    <SheetSection title="Hour meter" hint={`${recorded} Leave both fields empty to keep that.`}>
      <HoursFields />
    </SheetSection>
  )
}

function HoursFields() {
  const { place, sheet } = useSheet()
  const { meter } = place
  if (!meter) return <p className={classes.hint}>The machine has no hour meter: the run hours are estimated.</p>
  const last = meter.lastTotalHours === null ? undefined : `Last known: ${formatCount(meter.lastTotalHours)} run hours`
  return (
    <SheetPair>
      <SheetNumber at="meterShowsHours" label={`${meter.name} shows`} description={last} />
      {sheet.meterShowsHours.trim() === '' && (
        <SheetText
          at="noHoursReason"
          label="Or why it was not read"
          description="Run hours then have to be estimated"
        />
      )}
    </SheetPair>
  )
}

/** The seat, measured before anything goes on. */
export function SeatSection() {
  const { sheet, place } = useSheet()
  const nominalMm = place.position.shaftDiameterMm
  return (
    <SheetSection
      title="Shaft and seat"
      hint="No burr, no step, split faces clean. The ring width follows the seat width: measure it."
    >
      <SheetNumber
        at="shaftDiameterMm"
        label="Shaft diameter, smallest reading"
        description={nominalMm === null ? undefined : `Nominal ${nominalMm} mm, ${place.position.shaftSystem}`}
      />
      {seatSentences(numberOf(sheet, 'shaftDiameterMm'), nominalMm, place.position.shaftSystem).map((sentence) => (
        <p key={sentence} className={classes.ask}>
          {sentence}
        </p>
      ))}
    </SheetSection>
  )
}

/** What a shaft reading calls for: tolerance (R-SHAFT), and inch against metric (R-INCH). */
function seatSentences(shaftMm: number | null, nominalMm: number | null, system: 'inch' | 'metric'): string[] {
  if (shaftMm === null) return []
  try {
    const shaft = nominalMm === null ? null : checkShaft(nominalMm, [shaftMm])
    const inch = shaftMm >= 5 && shaftMm <= 1000 ? inchOrMetric(shaftMm) : null
    const asked = inch?.kind === 'ask' ? [`${inch.sentence} The book says ${system}.`] : []
    return [...(shaft?.found ? shaft.cautions : []), ...asked]
  } catch (error) {
    if (error instanceof InputError) return ['The reading is far from the nominal diameter: is it the right shaft?']
    throw error
  }
}
