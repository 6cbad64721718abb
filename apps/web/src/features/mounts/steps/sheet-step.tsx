import type { StepKey } from '../sheet-steps.ts'
import { StepBench } from './step-bench.tsx'
import { StepCap } from './step-cap.tsx'
import { StepDrive } from './step-drive.tsx'
import { StepGrease } from './step-grease.tsx'
import { StepKit } from './step-kit.tsx'
import { StepLock } from './step-lock.tsx'
import { StepRings } from './step-rings.tsx'
import { StepSafe } from './step-safe.tsx'
import { StepSeat } from './step-seat.tsx'
import { StepSign } from './step-sign.tsx'
import { StepStart } from './step-start.tsx'
import { StepStrip } from './step-strip.tsx'
import { StepTurn } from './step-turn.tsx'

const screens = {
  safe: StepSafe,
  strip: StepStrip,
  seat: StepSeat,
  kit: StepKit,
  bench: StepBench,
  drive: StepDrive,
  lock: StepLock,
  rings: StepRings,
  grease: StepGrease,
  cap: StepCap,
  turn: StepTurn,
  start: StepStart,
} as const

/** The screen of one step. */
export function SheetStep({ step, onStep }: { step: StepKey; onStep: (step: StepKey) => void }) {
  if (step === 'sign') return <StepSign onStep={onStep} />
  const Screen = screens[step]
  return <Screen />
}
