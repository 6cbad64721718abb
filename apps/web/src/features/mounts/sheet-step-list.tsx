import { useDisclosure } from '@mantine/hooks'
import { BottomSheet } from '../../ui/over-page.tsx'
import { memo } from 'react'
import { stepTitle, type SheetScope, type StepKey } from './sheet-steps.ts'
import { StepMark } from './step-mark.tsx'
import { stepWords, type StepState } from './step-state.ts'
import classes from './step-list.module.css'

interface StepListProps {
  scope: SheetScope
  states: Record<StepKey, StepState>
  step: StepKey
  onStep: (step: StepKey) => void
}

/** All steps in the order of the work, each with its state; any of them can be gone to. */
export const SheetStepList = memo(function SheetStepList({ scope, states, step, onStep }: StepListProps) {
  return (
    <ol className={classes.list} aria-label="Steps of the sheet">
      {scope.steps.map((key, at) => (
        <li key={key}>
          <button
            type="button"
            className={classes.step}
            aria-current={key === step ? 'step' : undefined}
            onClick={() => onStep(key)}
          >
            <StepMark state={states[key]} />
            <span className={classes.name}>
              <span className={classes.number}>{at + 1}</span>
              <span>{stepTitle(key, scope)}</span>
            </span>
            <span className={classes.word} data-state={states[key]}>
              {stepWords[states[key]]}
            </span>
          </button>
        </li>
      ))}
    </ol>
  )
})

/** The steps as the marks of a ruler, for a phone: where one is, how far it is told, and the way to all steps. */
export const StepRuler = memo(function StepRuler({ scope, states, step, onStep }: StepListProps) {
  const [opened, list] = useDisclosure(false)
  const at = scope.steps.indexOf(step)
  return (
    <>
      <button type="button" className={classes.ruler} aria-haspopup="dialog" onClick={list.open}>
        <span className={classes.rulerHead}>
          <span>
            Step <strong>{at + 1}</strong> of {scope.steps.length}
          </span>
          <span className={classes.all}>All steps</span>
        </span>
        <span className={classes.marks} aria-hidden="true">
          {scope.steps.map((key) => (
            <span key={key} className={classes.tick} data-now={key === step || undefined}>
              <StepMark state={states[key]} />
            </span>
          ))}
        </span>
      </button>
      <BottomSheet
        opened={opened}
        onClose={list.close}
        title="Steps of the sheet"
        styles={{ content: { height: 'auto', maxHeight: '88dvh' } }}
      >
        <SheetStepList
          scope={scope}
          states={states}
          step={step}
          onStep={(key) => {
            list.close()
            onStep(key)
          }}
        />
      </BottomSheet>
    </>
  )
})
