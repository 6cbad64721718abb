import { useSuspenseQuery } from '@tanstack/react-query'
import { halfOfBand } from '@shaftbook/bearing/band'
import { useUnits } from '../../lib/units.tsx'
import { lengthUnitKeys, lengthUnits } from '../../lib/length-units.ts'
import { useSite } from '../../session/site-access.tsx'
import { ChoiceField } from '../../ui/choice-field.tsx'
import type { BearingType } from './band-of-place.ts'
import { bearingTypesQuery } from './mount-queries.ts'
import { ReadingEntry } from './reading-entry.tsx'
import { useSheet } from './sheet-context.ts'
import { SheetNumber, SheetSelect, SheetText } from './sheet-fields.tsx'
import { SheetPair, SheetSection } from './sheet-section.tsx'
import classes from './sheet.module.css'

/** The bearing that goes on. */
export function NewBearingSection() {
  const { scope, sheet, place } = useSheet()
  const { code, site } = useSite()
  const { bearingType: planned } = place
  const mayChangeClass = site.role === 'engineer' || site.role === 'manager'
  const { data: types } = useSuspenseQuery(bearingTypesQuery(code))
  if (!scope.bearing) return null
  const options = types.items
    .filter((type) => goesOn(type, planned, mayChangeClass))
    .map(({ id, designation }) => ({
      value: id,
      label: id === planned.id ? `${designation} (as planned here)` : designation,
    }))
  return (
    <SheetSection title="The bearing that goes on" hint="Read it from the ring, not from the box.">
      <SheetSelect at="bearingTypeId" label="Bearing type" options={options} required />
      {sheet.bearingTypeId !== planned.id && (
        <p className={classes.ask}>
          The position is planned for {planned.designation}: is this one meant? Class and residual minimum change with
          it.
        </p>
      )}
      <SheetPair>
        <SheetText at="serial" label="Serial number" />
        <SheetText at="lot" label="Lot" />
        <SheetText at="maker" label="Maker" />
        <SheetText at="packedOn" label="Packed on" type="date" />
      </SheetPair>
    </SheetSection>
  )
}

/** The same basic code on the same taper goes on; another clearance class is the engineer's to decide. */
function goesOn(type: BearingType, planned: BearingType, mayChangeClass: boolean): boolean {
  const alike = type.basicCode === planned.basicCode && type.taper === planned.taper
  return alike && (mayChangeClass || type.clearanceClass === planned.clearanceClass)
}

/** Bench clearance: both rows, before anything is driven. */
export function BenchSection() {
  const { sheet, change, limits, type, judged } = useSheet()
  const { lengthRange } = useUnits()
  if (sheet.method === 'by-feel') return null
  const { benchUm } = judged.gauge
  const advice =
    benchUm !== null && limits.classUm && limits.band ? halfOfBand(benchUm, limits.classUm, limits.band) : null
  return (
    <SheetSection
      title="Bench clearance"
      hint={`Bearing and gauge at shop temperature. Turn the ring so that the rollers seat; blade over an unloaded roller, both rows.${
        limits.classUm ? ` ${type.clearanceClass} has ${lengthRange(limits.classUm.minUm, limits.classUm.maxUm)}.` : ''
      }`}
    >
      <SheetPair>
        <SheetText at="gauge" label="Feeler set" />
        <SheetNumber at="temperatureC" label="Temperature of bearing and gauge" />
      </SheetPair>
      <ChoiceField
        legend="All readings of this record are in"
        layout="line"
        choices={lengthUnitKeys.map((value) => ({ value, label: lengthUnits[value].symbol }))}
        value={sheet.unit}
        onChange={(unit) => change({ unit })}
        description="Comma or point. Changing the unit leaves the numbers as they were typed."
      />
      <ReadingEntry moment="bench" />
      {advice && advice.half !== 'either' && (
        <p className={classes.hint}>
          The bearing lies in the {advice.half} half of its class: aim at a reduction of{' '}
          {lengthRange(advice.aimMinUm, advice.aimMaxUm)}.
        </p>
      )}
    </SheetSection>
  )
}
