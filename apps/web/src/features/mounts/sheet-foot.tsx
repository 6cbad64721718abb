import { Button } from '@mantine/core'
import { useSheet } from './sheet-context.ts'
import { stepTitle, type StepKey } from './sheet-steps.ts'
import classes from './sheet.module.css'

interface SheetFootProps {
  step: StepKey
  onStep: (step: StepKey) => void
  /** Signing was tried: the way back to it is short. */
  tried: boolean
  busy: boolean
  onSign: () => void
}

/** Back and Next where the thumb is. The last step signs. */
export function SheetFoot({ step, onStep, tried, busy, onSign }: SheetFootProps) {
  const { scope } = useSheet()
  const at = scope.steps.indexOf(step)
  const [before, after] = [scope.steps[at - 1], scope.steps[at + 1]]
  return (
    <div className={classes.foot}>
      {before && (
        <Button size="touch" variant="default" className={classes.back} onClick={() => onStep(before)}>
          Back
        </Button>
      )}
      {after && tried && after !== 'sign' && (
        <Button size="touch" variant="outline" onClick={() => onStep('sign')}>
          To Sign
        </Button>
      )}
      {after ? (
        <Button size="touch" className={classes.next} data-next onClick={() => onStep(after)}>
          <span>
            Next<span className={classes.nextName}>{stepTitle(after, scope)}</span>
          </span>
        </Button>
      ) : (
        <Button size="touch" className={classes.next} data-next loading={busy} onClick={onSign}>
          {scope.purpose === 'correction' ? 'Sign the correction' : 'Sign'}
        </Button>
      )}
    </div>
  )
}
