import { Button } from '@mantine/core'
import type { Choice } from '../../../ui/choice-field.tsx'
import type { SeatDecision } from '@shaftbook/contract/mount-details'
import { OutcomeLine } from '../outcome-line.tsx'
import { SeatGrid } from '../seat-grid.tsx'
import { useSheet } from '../sheet-context.ts'
import { SheetChoice, SheetNote, SheetNumber } from '../sheet-fields.tsx'
import { inchQuestion, ringPlan, shaftAnswer } from '../sheet-seat.ts'
import { useSlots } from '../sheet-slots.ts'
import { StepPart } from '../step-part.tsx'
import classes from '../sheet.module.css'

const decisions: readonly Choice<SeatDecision>[] = [
  { value: 'use-again', label: 'Use it again' },
  { value: 'repaired', label: 'Repaired' },
  { value: 'replaced', label: 'Replaced' },
  { value: 'engineer-asked', label: 'The engineer is asked' },
]

/** Shaft and housing, measured before anything goes on. */
export function StepSeat() {
  const { scope, place } = useSheet()
  const { photos } = useSlots()
  const { shaftDiameterMm: nominalMm, shaftSystem } = place.position
  return (
    <>
      <StepPart
        title={scope.shaftDiameters ? 'Shaft' : 'Tapered journal'}
        hint={shaftHint(nominalMm, shaftSystem, scope.shaftDiameters)}
      >
        {scope.shaftDiameters && <SeatGrid seat="shaft" title="Shaft diameter" />}
        <ShaftVerdict />
        <InchQuestion />
        <SheetChoice
          at="shaftSurface"
          legend="Surface under the seat"
          choices={[
            { value: 'clean', label: 'Clean', hint: 'no burr, no step, no rust' },
            { value: 'dressed', label: 'Dressed', hint: 'burrs taken off with a fine stone' },
            { value: 'damaged', label: 'Damaged', hint: 'scored, stepped, worn' },
          ]}
        />
        <SheetChoice at="shaftDecision" legend="What becomes of the shaft?" choices={decisions} />
      </StepPart>
      <StepPart title="Housing" hint="Split faces clean, halves of one housing only, base flat.">
        <SeatGrid seat="housing" title="Housing bore" />
        <SheetNumber
          at="housingSeatWidthMm"
          label="Width of the seat"
          description="It differs by make for the same size: measure it"
        />
        <RingAnswer />
        <SheetNumber at="softFootMm" label="Soft foot" description="Less than 0.05 mm is usual" />
        <SheetChoice at="housingDecision" legend="What becomes of the housing?" choices={decisions} />
        <SheetNote at="seatNote" label="Remark" />
        {photos?.('seat')}
      </StepPart>
    </>
  )
}

function shaftHint(nominalMm: number | null, system: string, measured: boolean): string {
  if (!measured) return 'A taper has no single diameter: judge its surface and its bearing pattern.'
  const nominal = nominalMm === null ? 'No nominal diameter stands in the book.' : `Nominal ${nominalMm} mm, ${system}.`
  return `${nominal} Three planes along the seat, two directions each.`
}

const shaftWords = {
  'inside-h9': ['pass', 'Inside h9'],
  'inside-h10': ['warning', 'Inside h10'],
  'below-h10': ['fail', 'Below h10: ask the engineer'],
  'above-nominal': ['fail', 'Above nominal'],
} as const

/** The readings against h9, as they come. R-SHAFT. */
function ShaftVerdict() {
  const { sheet, scope, place, type } = useSheet()
  const answer = shaftAnswer(sheet, scope, place.position.shaftDiameterMm, type.taper)
  return (
    <output className={classes.answer}>
      {answer.kind === 'checked' && (
        <OutcomeLine
          outcome={shaftWords[answer.check.verdict][0]}
          name="Shaft"
          word={shaftWords[answer.check.verdict][1]}
        >
          {answer.check.cautions.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </OutcomeLine>
      )}
      {(answer.kind === 'far' || answer.kind === 'no-row') && (
        <OutcomeLine outcome="warning" name="Shaft">
          {answer.sentence}
        </OutcomeLine>
      )}
    </output>
  )
}

/** Asks which system a look-alike size belongs to; nobody guesses. R-INCH. */
function InchQuestion() {
  const { sheet, change, scope, place } = useSheet()
  const question = inchQuestion(sheet, scope)
  if (!question) return null
  const { shaftSystem } = sheet
  const booked = place.position.shaftSystem
  const name = { inch: `Inch, ${question.inchShaft} in`, metric: `Metric, ${question.metricShaftMm} mm` }
  return (
    <div className={classes.question} role={shaftSystem === '' ? 'alert' : undefined}>
      <p>
        {question.sentence} The book says {booked}.
      </p>
      <div className={classes.answers}>
        {(['inch', 'metric'] as const).map((system) => (
          <Button
            key={system}
            size="touch"
            variant={shaftSystem === system ? 'filled' : 'default'}
            aria-pressed={shaftSystem === system}
            onClick={() => change({ shaftSystem: system })}
          >
            {name[system]}
          </Button>
        ))}
      </div>
      {shaftSystem !== '' && shaftSystem !== booked && (
        <p>
          That is not what the book says. Sleeve, nut and washer of the kit are {booked}: ask the engineer before you go
          on.
        </p>
      )}
    </div>
  )
}

/** The rings that the measured width gives. R-RING. */
function RingAnswer() {
  const { sheet, place, type } = useSheet()
  const plan = ringPlan(sheet, place.position, type.widthMm)
  return (
    <output className={classes.answer}>
      {plan && (
        <OutcomeLine
          outcome={plan.kind === 'refused' ? 'fail' : 'pass'}
          name={plan.kind === 'refused' ? 'The bearing and this seat' : 'Rings'}
          word={plan.kind === 'refused' ? 'Do not go together' : ''}
        >
          {plan.sentence}
        </OutcomeLine>
      )}
    </output>
  )
}
