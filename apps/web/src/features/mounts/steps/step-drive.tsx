import { useMediaQuery } from '@mantine/hooks'
import { Caution } from '../../../ui/caution.tsx'
import { ReadingEntry } from '../reading-entry.tsx'
import { useSheet } from '../sheet-context.ts'
import { SheetNumber, SheetText } from '../sheet-fields.tsx'
import { SheetCautions, SheetGauge } from '../sheet-gauge.tsx'
import { FieldPair, StepPart } from '../step-part.tsx'
import classes from '../sheet.module.css'

/** Driving the bearing up its taper, or putting it on its cylindrical seat. */
export function StepDrive() {
  const { scope, sheet } = useSheet()
  return (
    <>
      {scope.purpose !== 'correction' && (scope.taper ? <DriveCaution /> : <HotCaution />)}
      {scope.taper && <ZeroPoint />}
      {sheet.method === 'by-feel' && (
        <div className={classes.fields}>
          <SheetText
            at="byFeelPerson"
            label="Judged by"
            description="The outer ring turns freely and swivels with slight resistance"
            required
          />
        </div>
      )}
      {scope.clearance && <Mounted />}
    </>
  )
}

function DriveCaution() {
  const { scope } = useSheet()
  return (
    <Caution title="Oil under pressure, hot rings, chips">
      Oil under pressure goes through skin: check hose and fitting, keep hands and face away. Gloves for hot rings, eye
      and face protection. {scope.withdrawal ? 'Press the sleeve in, never strike it.' : 'Leave the nut on.'} No lock
      washer while driving where its tab would shear.
    </Caution>
  )
}

function HotCaution() {
  return (
    <Caution title="Hot rings">
      Heat by induction or in oil within the maker's limit, never with a flame, and only with the permit where dust or
      gas may be; gloves. Hold the ring against its shoulder until it has cooled, then try with a thin blade whether it
      sits.
    </Caution>
  )
}

function ZeroPoint() {
  const { limits, scope } = useSheet()
  const travel = limits.band?.driveUpMm
  return (
    <StepPart title={scope.withdrawal ? 'How far the sleeve went in' : 'How far the bearing went on'}>
      <SheetText
        at="zeroPointMethod"
        label="How was the zero point found?"
        description="Hand tight, then first resistance; the sleeve has closed on the shaft"
      />
      <FieldPair>
        <SheetNumber
          at="driveUpMm"
          label="Axial travel from zero"
          description={travel ? `The band goes with ${travel.min} to ${travel.max} mm` : undefined}
        />
        <SheetNumber at="nutAngleDeg" label="Nut turned by" />
      </FieldPair>
    </StepPart>
  )
}

/** Mounted clearance: the gauge is the centre of the sheet. */
function Mounted() {
  const { scope, limits } = useSheet()
  const wide = useMediaQuery('(min-width: 1200px)', undefined, { getInitialValueInEffect: false })
  const judged = limits.judged
  return (
    <StepPart
      title="Mounted clearance"
      hint={
        judged
          ? 'Drive in small steps and gauge at each. Type over the numbers: the last readings are the ones that count.'
          : 'No band applies here; the clearance that is left is still worth a line.'
      }
    >
      {scope.taper && !wide && <SheetGauge size="phone" />}
      <ReadingEntry moment="mounted" />
      <SheetCautions />
    </StepPart>
  )
}
