import { Button } from '@mantine/core'
import { lengthUnits, type LengthUnit } from '../../lib/length-units.ts'
import type { TypedStep } from './sheet.ts'
import classes from './drive-up-guide.module.css'

interface DriveUpStepsProps {
  steps: readonly TypedStep[]
  /** The step that is being typed is not listed. */
  openAt: number
  unit: LengthUnit
  onStrike: (at: number, struck: boolean) => void
}

/** The steps so far as typed, the newest first. A mistyped one is struck out and stays to be read. */
export function DriveUpSteps({ steps, openAt, unit, onStrike }: DriveUpStepsProps) {
  const listed = steps.map((step, at) => ({ step, at })).filter(({ at }) => at !== openAt)
  if (listed.length === 0) return null
  return (
    <section className={classes.part}>
      <h4 className={classes.partTitle}>Steps so far</h4>
      <ol className={classes.steps} reversed>
        {listed.toReversed().map(({ step, at }) => (
          <li key={at} value={at + 1} data-struck={step.struck}>
            <StepWords step={step} number={at + 1} unit={unit} />
            <Button variant="default" size="touch" onClick={() => onStrike(at, !step.struck)}>
              {step.struck ? 'Count again' : 'Strike out'}
              <span className="visually-hidden"> step {at + 1}</span>
            </Button>
          </li>
        ))}
      </ol>
    </section>
  )
}

function StepWords({ step, number, unit }: { step: TypedStep; number: number; unit: LengthUnit }) {
  const { pair, driveUpMm, nutAngleDeg, struck } = step
  const shown = (text: string, symbol: string): string => (text.trim() === '' ? '–' : `${text.trim()}${symbol}`)
  const travel = [driveUpMm.trim() && `${driveUpMm.trim()} mm`, nutAngleDeg.trim() && `${nutAngleDeg.trim()}°`]
  const words = (
    <>
      <span className={classes.stepNumber}>{number}</span>
      <span>A {shown(pair.A.text, '')}</span>
      <span>B {shown(pair.B.text, ` ${lengthUnits[unit].symbol}`)}</span>
      <span className={classes.soft}>{travel.filter(Boolean).join(', ')}</span>
    </>
  )
  return struck ? (
    <s className={classes.stepWords}>
      <span className="visually-hidden">Struck out: </span>
      {words}
    </s>
  ) : (
    <span className={classes.stepWords}>{words}</span>
  )
}
