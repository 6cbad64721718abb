import { Button } from '@mantine/core'
import { stacksOf } from '@shaftbook/bearing/feeler-blades'
import { memo, useDeferredValue, useEffect, useMemo, useRef, useState, type ReactNode } from 'react'
import type { SiteSettings } from '@shaftbook/contract/access'
import type { BandBearing } from '@shaftbook/contract/band-of-position'
import type { LengthUnit } from '../../lib/length-units.ts'
import { useUnits } from '../../lib/units.tsx'
import type { GaugeInput } from '../../ui/clearance-gauge-geometry.ts'
import { GaugeSays } from '../../ui/clearance-gauge-says.tsx'
import { ClearanceGauge } from '../../ui/clearance-gauge.tsx'
import type { PlaceLimits } from './band-of-place.ts'
import { DriveUpEntry } from './drive-up-entry.tsx'
import { DriveUpLeft, DriveUpStacks, DriveUpWarnings } from './drive-up-left.tsx'
import { driveUpState, emptyStep, openStepAt } from './drive-up-state.ts'
import { DriveUpSteps } from './drive-up-steps.tsx'
import { driveUpSaying } from './drive-up-words.ts'
import type { ReadingPair, TypedStep } from './sheet.ts'
import classes from './drive-up-guide.module.css'

interface DriveUpGuideProps {
  /** The bench readings as typed. */
  bench: readonly ReadingPair[]
  /** The steps as typed, in the order taken; the last that is not struck is the one being typed. */
  steps: readonly TypedStep[]
  /** Unit of the typed readings. */
  unit: LengthUnit
  type: BandBearing
  limits: PlaceLimits
  settings: SiteSettings
  byFeel?: boolean
  /** The zero point was found by resistance, or the seat is a tapered journal: travel and angle may be trusted. */
  travelTrusted: boolean
  /** Pitch of the nut's thread in mm; null where it is not known. */
  pitchMm: number | null
  /** The blades of the feeler set in µm; null where no set is chosen. */
  bladesUm: readonly number[] | null
  onSteps: (steps: TypedStep[]) => void
  /** Shown under the steps: the readings at the end place. */
  children?: ReactNode
}

/** As many steps as a record takes. */
const mostSteps = 40

/**
 * Guides a drive-up at the shaft: what to do now in large letters, the readings of the step, the gauge, what is left, the
 * stacks to try and the steps so far. Everything stays as typed; what it says comes from the same rules as the verdict.
 */
export function DriveUpGuide(props: DriveUpGuideProps) {
  const {
    bench,
    steps,
    unit,
    type,
    limits,
    settings,
    byFeel = false,
    travelTrusted,
    pitchMm,
    bladesUm,
    onSteps,
  } = props
  const { unit: sayIn } = useUnits()
  const [typing, setTyping] = useState<'A' | 'B' | null>(null)
  const stacks = useMemo(() => (bladesUm && bladesUm.length > 0 ? stacksOf(bladesUm) : null), [bladesUm])
  const state = useMemo(
    () =>
      driveUpState({
        bench,
        steps,
        unit,
        sayIn,
        type,
        limits,
        settings,
        byFeel,
        travelTrusted,
        pitchMm,
        stacks,
        typing,
      }),
    [bench, steps, unit, sayIn, type, limits, settings, byFeel, travelTrusted, pitchMm, stacks, typing],
  )
  // the advice follows each key at once; what is drawn and listed may come a moment later
  const { gauge, guidance } = useDeferredValue(state)
  const listed = useDeferredValue(steps)
  const guided = guidance.kind === 'guided' ? guidance : null
  const bandSource = limits.band?.source.title ?? ''

  return (
    <div className={classes.box}>
      <div className={classes.guide}>
        <div className={classes.says}>
          <GaugeSays saying={driveUpSaying(state, sayIn)} />
        </div>
        <div className={classes.work}>
          {state.guidance.kind !== 'no-guidance' && (
            <StepEntry
              steps={steps}
              unit={unit}
              boreMm={type.boreMm}
              ready={state.guidance.kind === 'guided' && !state.asks}
              onSteps={onSteps}
              onTyping={setTyping}
            />
          )}
          {guided && <DriveUpWarnings guided={guided} about="now" />}
        </div>
        <div className={classes.seen}>
          <Gauge gauge={gauge} classLabel={type.clearanceClass} bandSource={bandSource} />
        </div>
        <div className={classes.rest}>
          {guided && <DriveUpStacks guided={guided} />}
          {guided && <DriveUpLeft guided={guided} bandSource={bandSource} />}
          {guided && <DriveUpWarnings guided={guided} about="throughout" />}
          <DriveUpSteps
            steps={listed}
            openAt={openStepAt(listed)}
            unit={unit}
            onStrike={(at, struck) => onSteps(steps.map((step, index) => (index === at ? { ...step, struck } : step)))}
          />
          {props.children}
        </div>
      </div>
    </div>
  )
}

const Gauge = memo(function Gauge(props: { gauge: GaugeInput; classLabel: string; bandSource: string }) {
  const { gauge, classLabel, bandSource } = props
  return <ClearanceGauge {...gauge} size="hand" mute classLabel={classLabel} bandSource={bandSource} />
})

interface StepEntryProps extends Pick<DriveUpGuideProps, 'steps' | 'unit' | 'onSteps'> {
  boreMm: number
  /** Both rows of the step are read and not questioned. */
  ready: boolean
  onTyping: (row: 'A' | 'B' | null) => void
}

/** The step that is being typed, and the way to the next. */
function StepEntry({ steps, unit, boreMm, ready, onSteps, onTyping }: StepEntryProps) {
  const at = openStepAt(steps)
  const step = steps[at] ?? emptyStep()
  const firstField = useRef<HTMLInputElement>(null)
  const [moved, setMoved] = useState(0)
  useEffect(() => {
    if (moved > 0) firstField.current?.focus()
  }, [moved])
  const typed = [step.pair.A.text, step.pair.B.text].filter((text) => text.trim() !== '').length
  return (
    <div className={classes.entryBox}>
      <DriveUpEntry
        step={step}
        number={at + 1}
        unit={unit}
        boreMm={boreMm}
        firstField={firstField}
        onStep={(changed) => onSteps([...steps.slice(0, at), changed])}
        onTyping={onTyping}
      />
      <div className={classes.acts}>
        <Button
          size="touch"
          disabled={!ready || typed < 2 || at + 1 >= mostSteps}
          onClick={() => {
            onSteps([...steps, emptyStep()])
            setMoved((times) => times + 1)
          }}
        >
          Keep, and next step
        </Button>
        {typed > 0 && (
          <Button
            variant="default"
            size="touch"
            onClick={() => onSteps([...steps.slice(0, at), { ...step, struck: true }])}
          >
            Strike out
          </Button>
        )}
      </div>
    </div>
  )
}
