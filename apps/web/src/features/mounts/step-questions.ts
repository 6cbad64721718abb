import type { KitAnswer } from '@shaftbook/contract/judge-kit-check'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import type { BearingType } from './band-of-place.ts'
import type { Faults } from './sheet-faults.ts'
import type { SheetJudgement } from './sheet-judgement.ts'
import { inchQuestion, ringPlan, shaftAnswer } from './sheet-seat.ts'
import type { SheetScope, StepKey } from './sheet-steps.ts'
import type { Sheet } from './sheet.ts'
import { stepOfKey } from './step-state.ts'

interface Asking {
  sheet: Sheet
  scope: SheetScope
  place: PositionOverview
  type: BearingType
  judged: SheetJudgement
  kitAnswers: ReadonlyMap<string, KitAnswer>
  /** Whatever is wrong with a field, by its key. */
  faults: Faults
}

/** The steps on which something waits for an answer of the person. */
export function askingSteps(asking: Asking): ReadonlySet<StepKey> {
  const { sheet, scope, judged, faults } = asking
  const asks = new Set(Object.keys(faults).map((key) => stepOfKey(key, scope)))
  if (seatAsks(asking)) asks.add('seat')
  if (kitAsks(asking)) asks.add('kit')
  if (judged.needsReason && sheet.outOfBandReason.trim() === '') asks.add('sign')
  return asks
}

function seatAsks({ sheet, scope, place, type }: Asking): boolean {
  const shaft = shaftAnswer(sheet, scope, place.position.shaftDiameterMm, type.taper)
  const off = shaft.kind === 'checked' && ['above-nominal', 'below-h10'].includes(shaft.check.verdict)
  const undecided = (off || shaft.kind === 'far') && sheet.shaftDecision === ''
  const system = inchQuestion(sheet, scope) !== null && sheet.shaftSystem === ''
  return undecided || system || ringPlan(sheet, place.position, type.widthMm)?.kind === 'refused'
}

/** A part that never goes on, or another one than planned without a reason. */
function kitAsks({ sheet, scope, kitAnswers }: Asking): boolean {
  const open = [...kitAnswers].some(
    ([id, { verdict }]) => verdict === 'refused' || (verdict === 'asked' && sheet.kitCheck[id]?.reason.trim() === ''),
  )
  return scope.kit && open
}
