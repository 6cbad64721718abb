import { useMediaQuery } from '@mantine/hooks'
import { ChoiceField, type Choice } from '../../ui/choice-field.tsx'
import { ReadingEntry } from './reading-entry.tsx'
import { useSheet } from './sheet-context.ts'
import { WorkCaution } from './work-caution.tsx'
import { SheetNumber, SheetText } from './sheet-fields.tsx'
import { SheetCautions, SheetGauge } from './sheet-gauge.tsx'
import { SheetPair, SheetSection } from './sheet-section.tsx'
import type { Method } from './sheet.ts'

const methods: readonly Choice<Method>[] = [
  { value: 'feeler', label: 'Clearance by feelers', hint: 'the first choice: the band is judged' },
  { value: 'drive-up', label: 'Axial travel', hint: 'only from a zero point found by resistance' },
  { value: 'by-feel', label: 'By feel', hint: 'the ring swivels with slight resistance; a named person' },
]

/** Driving the bearing up its taper. */
export function DriveUpSection() {
  const { sheet, change, scope, limits, faultOf } = useSheet()
  const travel = limits.band?.driveUpMm
  if (!scope.taper) return null
  return (
    <SheetSection
      title="Drive-up"
      hint="No lock washer while driving. Drive in steps, gauge at each step, stop inside the band."
    >
      <WorkCaution title="High pressure, hot rings, chips">
        Oil under pressure goes through skin: check hose and fitting, keep hands away from a leak. Wear gloves for hot
        rings. Keep the nut on so that the bearing cannot come off the taper.
      </WorkCaution>
      <ChoiceField
        legend="What tells when to stop?"
        choices={methods}
        value={sheet.method}
        onChange={(method) => change({ method })}
        error={faultOf('method')}
      />
      {sheet.method === 'by-feel' && <SheetText at="byFeelPerson" label="Judged by" required />}
      <SheetText
        at="zeroPointMethod"
        label="How was the zero point found?"
        description="Hand tight, then first resistance"
      />
      <SheetPair>
        <SheetNumber
          at="driveUpMm"
          label="Axial travel from zero"
          description={travel ? `The band goes with ${travel.min} to ${travel.max} mm` : undefined}
        />
        <SheetNumber at="nutAngleDeg" label="Nut turned by" />
      </SheetPair>
    </SheetSection>
  )
}

/** Mounted clearance: the gauge is the centre of the sheet. */
export function MountedSection() {
  const { sheet, scope } = useSheet()
  const wide = useMediaQuery('(min-width: 1200px)', undefined, { getInitialValueInEffect: false })
  if (sheet.method === 'by-feel') return null
  return (
    <SheetSection
      title="Mounted clearance"
      hint={
        scope.taper
          ? 'Type over the numbers as you drive on: the last readings are the ones that count.'
          : 'No band applies to a cylindrical seat; the clearance that is left is still worth a line.'
      }
    >
      {!scope.taper && (
        <WorkCaution title="Hot rings">
          Heat by induction or in oil within the maker's limit, never with a flame; gloves. Hold the ring against its
          shoulder until it has cooled.
        </WorkCaution>
      )}
      <ReadingEntry moment="mounted" />
      {scope.taper && !wide && <SheetGauge size="phone" />}
      <SheetCautions />
    </SheetSection>
  )
}
