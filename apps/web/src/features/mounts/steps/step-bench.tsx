import { useSuspenseQuery } from '@tanstack/react-query'
import { halfOfBand } from '@shaftbook/bearing/band'
import { checkClass } from '@shaftbook/bearing/clearance'
import { checkSentence } from '@shaftbook/contract/mount-checks'
import { useUnits } from '../../../lib/units.tsx'
import { lengthUnitKeys, lengthUnits } from '../../../lib/length-units.ts'
import { useSite } from '../../../session/site-access.tsx'
import { ChoiceField } from '../../../ui/choice-field.tsx'
import type { BearingType } from '../band-of-place.ts'
import { GaugeField } from '../gauge-field.tsx'
import { MethodChoice } from '../method-choice.tsx'
import { bearingTypesQuery } from '../mount-queries.ts'
import { OutcomeLine } from '../outcome-line.tsx'
import { ReadingEntry } from '../reading-entry.tsx'
import { useSheet } from '../sheet-context.ts'
import { SheetNumber, SheetSelect, SheetText } from '../sheet-fields.tsx'
import { AskLine, FieldPair, StepPart } from '../step-part.tsx'
import classes from '../sheet.module.css'

/** The bearing that goes on, and its clearance before anything is driven. */
export function StepBench() {
  const { scope } = useSheet()
  return (
    <>
      {scope.bearing && <NewBearing />}
      <MethodChoice />
      {scope.clearance && <BenchClearance />}
    </>
  )
}

function NewBearing() {
  const { sheet, place } = useSheet()
  const { code, site } = useSite()
  const { bearingType: planned } = place
  const mayChangeClass = site.role === 'engineer' || site.role === 'manager'
  const { data: types } = useSuspenseQuery(bearingTypesQuery(code))
  const options = types.items
    .filter((type) => goesOn(type, planned, mayChangeClass))
    .map(({ id, designation }) => ({
      value: id,
      label: id === planned.id ? `${designation} (as planned here)` : designation,
    }))
  return (
    <StepPart title="The bearing that goes on" hint="Read it from the ring, not from the box.">
      <SheetSelect at="bearingTypeId" label="Bearing type" options={options} required />
      {sheet.bearingTypeId !== planned.id && (
        <AskLine>
          The position is planned for {planned.designation}: is this one meant? Class and residual minimum change with
          it.
        </AskLine>
      )}
      <FieldPair>
        <SheetText at="serial" label="Serial number" />
        <SheetText at="lot" label="Lot" />
        <SheetText at="maker" label="Maker" />
        <SheetText at="packedOn" label="Packed on" type="date" />
      </FieldPair>
    </StepPart>
  )
}

/** The same basic code on the same taper goes on; another clearance class is the engineer's to decide. */
function goesOn(type: BearingType, planned: BearingType, mayChangeClass: boolean): boolean {
  const alike = type.basicCode === planned.basicCode && type.taper === planned.taper
  return alike && (mayChangeClass || type.clearanceClass === planned.clearanceClass)
}

/** Both rows, at shop temperature, before anything is driven. */
function BenchClearance() {
  const { sheet, change, limits, type } = useSheet()
  const { lengthRange } = useUnits()
  const range = limits.classUm
  return (
    <StepPart
      title="Bench clearance"
      hint={`Bearing and gauge at shop temperature. Turn the ring so that the rollers seat; blade over an unloaded roller, both rows.${
        range ? ` ${type.clearanceClass} has ${lengthRange(range.minUm, range.maxUm)}.` : ''
      }`}
    >
      <FieldPair>
        <GaugeField />
        <SheetNumber at="temperatureC" label="Temperature of bearing and gauge" />
      </FieldPair>
      <ChoiceField
        legend="All readings of this record are in"
        layout="line"
        choices={lengthUnitKeys.map((value) => ({ value, label: lengthUnits[value].symbol }))}
        value={sheet.unit}
        onChange={(unit) => change({ unit })}
        description="Comma or point. Changing the unit leaves the numbers as they were typed."
      />
      <ReadingEntry moment="bench" />
      <BenchAnswer />
    </StepPart>
  )
}

/** What the readings say at once: the class on the box, the two rows, and where in the band to aim. */
function BenchAnswer() {
  const { limits, judged } = useSheet()
  const { length, lengthRange } = useUnits()
  const { benchUm } = judged.gauge
  if (benchUm === null) return <output className={classes.answer} />
  const rows = judged.judgement?.checks.find(({ rule }) => rule === 'R-ROW')
  const advice = limits.classUm && limits.band ? halfOfBand(benchUm, limits.classUm, limits.band) : null
  return (
    <output className={classes.answer}>
      <p>
        Mean of both rows: <strong>{length(benchUm)}</strong>
      </p>
      <ClassAnswer benchUm={benchUm} />
      {rows && (
        <OutcomeLine outcome={rows.outcome} name="The two rows" rule={rows.rule}>
          {checkSentence(rows, length)}
        </OutcomeLine>
      )}
      {advice && advice.half !== 'either' && (
        <p>
          The bearing lies in the {advice.half} half of its class: aim at a reduction of{' '}
          {lengthRange(advice.aimMinUm, advice.aimMaxUm)}.
        </p>
      )}
    </output>
  )
}

/** The class on the box against the reading, as soon as both rows are read. R-CL2. */
function ClassAnswer({ benchUm }: { benchUm: number }) {
  const { type } = useSheet()
  const { lengthRange } = useUnits()
  const { boreMm, taper, clearanceClass, kind } = type
  const series = kind === 'spherical-roller' ? null : type.series
  const bore = taper === null ? 'cylindrical' : 'tapered'
  const check = checkClass(benchUm, { boreMm, bore, clearanceClass, series }, 0)
  if (check.verdict === 'no-row') return null
  const inside = check.verdict === 'inside'
  const { minUm, maxUm } = check.range
  return (
    <OutcomeLine
      outcome={inside ? 'pass' : 'warning'}
      name={`Class ${clearanceClass}`}
      word={inside ? 'The reading fits' : 'The reading does not fit'}
      rule={check.rule}
    >
      {!inside &&
        `${clearanceClass} has ${lengthRange(minUm, maxUm)}: another class in the box, a cold gauge, or a damaged bearing.`}
    </OutcomeLine>
  )
}
