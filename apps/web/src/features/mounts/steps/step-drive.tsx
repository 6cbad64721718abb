import { Button } from '@mantine/core'
import { useSuspenseQuery } from '@tanstack/react-query'
import { useSite } from '../../../session/site-access.tsx'
import { ChoiceField } from '../../../ui/choice-field.tsx'
import { DriveUpGuide } from '../drive-up-guide.tsx'
import { gaugesQuery } from '../mount-queries.ts'
import { ReadingEntry } from '../reading-entry.tsx'
import { useSheet } from '../sheet-context.ts'
import { SheetNumber, SheetText } from '../sheet-fields.tsx'
import { endAt, lastStep, nutPitchMm, travelTrusted, zeroPoints } from '../sheet-drive.ts'
import { SheetCautions, SheetVerdict } from '../sheet-gauge.tsx'
import { FieldPair, StepPart } from '../step-part.tsx'
import { WorkCaution } from '../work-caution.tsx'
import classes from '../sheet.module.css'

/** Driving the bearing up its taper, or putting it on its cylindrical seat. */
export function StepDrive() {
  const { scope, sheet } = useSheet()
  return (
    <>
      {scope.taper ? <DriveCaution /> : <HotCaution />}
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
      {scope.taper && scope.clearance && scope.purpose !== 'correction' && <Guided />}
      {(scope.taper || scope.clearance) && <EndPlace />}
    </>
  )
}

function DriveCaution() {
  const { scope } = useSheet()
  return (
    <WorkCaution title="Oil under pressure, hot rings, chips">
      Oil under pressure goes through skin: check hose and fitting, keep hands and face away. Gloves for hot rings, eye
      and face protection. {scope.withdrawal ? 'Press the sleeve in, never strike it.' : 'Leave the nut on.'} No lock
      washer while driving where its tab would shear.
    </WorkCaution>
  )
}

function HotCaution() {
  return (
    <WorkCaution title="Hot rings">
      Heat by induction or in oil within the maker's limit, never with a flame, and only with the permit where dust or
      gas may be; gloves. Hold the ring against its shoulder until it has cooled, then try with a thin blade whether it
      sits.
    </WorkCaution>
  )
}

/** Travel and angle say nothing before it is known where they begin. */
function ZeroPoint() {
  const { sheet, change, faultOf, scope } = useSheet()
  const known: readonly string[] = Object.values(zeroPoints)
  const { zeroPointMethod } = sheet
  return (
    <ChoiceField
      legend={
        scope.sleeve
          ? 'Where does the travel begin? The sleeve has to close on the shaft first'
          : 'Where does the travel begin?'
      }
      choices={[
        { value: zeroPoints.resistance, label: zeroPoints.resistance },
        { value: zeroPoints.mark, label: zeroPoints.mark, hint: 'travel and angle are not trusted' },
        { value: zeroPoints.none, label: zeroPoints.none, hint: 'travel and angle are not trusted' },
        ...(zeroPointMethod === '' || known.includes(zeroPointMethod)
          ? []
          : [{ value: zeroPointMethod, label: zeroPointMethod }]),
      ]}
      value={zeroPointMethod}
      onChange={(method) => change({ zeroPointMethod: method })}
      error={faultOf('zeroPointMethod')}
    />
  )
}

/** The drive-up, step by step by the gauge. */
function Guided() {
  const { sheet, change, place, type, limits, settings } = useSheet()
  const { code } = useSite()
  const { data: gauges } = useSuspenseQuery(gaugesQuery(code))
  const bladesUm = gauges.items.find(({ name }) => name === sheet.gauge)?.bladesUm ?? null
  return (
    <StepPart title="By the gauge" hint="Drive a little, gauge both rows, enter what goes with light drag.">
      <DriveUpGuide
        bench={sheet.bench}
        steps={sheet.driveSteps}
        unit={sheet.unit}
        type={type}
        limits={limits}
        settings={settings}
        travelTrusted={travelTrusted(sheet, place.position.seat)}
        pitchMm={nutPitchMm(sheet, place.kit)}
        bladesUm={bladesUm}
        onSteps={(driveSteps) => change({ driveSteps })}
      />
    </StepPart>
  )
}

/** Where the driving ended: these readings are the ones that are judged. */
function EndPlace() {
  const { sheet, change, scope, limits } = useSheet()
  const travel = limits.band?.driveUpMm
  const last = lastStep(sheet.driveSteps)
  return (
    <StepPart
      title={scope.taper ? 'At the end place' : 'Mounted clearance'}
      hint={endHint(scope.clearance, limits.judged)}
    >
      {last && (
        <Button variant="default" size="touch" onClick={() => change(endAt(sheet, last))}>
          Take the last step as the end place
        </Button>
      )}
      {scope.clearance && <ReadingEntry moment="mounted" />}
      {scope.taper && (
        <FieldPair>
          <SheetNumber
            at="driveUpMm"
            label={scope.withdrawal ? 'Sleeve pressed in by' : 'Axial travel from zero'}
            description={travel ? `The band goes with ${travel.min} to ${travel.max} mm` : undefined}
          />
          <SheetNumber at="nutAngleDeg" label="Nut turned by" />
        </FieldPair>
      )}
      {scope.clearance && (
        <output className={classes.answer}>
          <SheetVerdict />
        </output>
      )}
      <SheetCautions />
    </StepPart>
  )
}

function endHint(read: boolean, judged: boolean): string | undefined {
  if (!read) return undefined
  return judged
    ? 'These readings are judged, and stand in the record as the mounted clearance.'
    : 'No band applies here; the clearance that is left is still worth a line.'
}
